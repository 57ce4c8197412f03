// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "app/photo_draft.h"

namespace ringrule {

/// A corrected animal that nobody accepted yet. Of the measure only outline, landmarks, whose tail is closed, and which
/// measure it would replace are kept: the numbers are measured anew.
struct KeptCorrection {
    StoredMeasure measure;  ///< its `id` is that of the measure it would replace; 0 when it is a new animal
    bool brooding = false;
};

/// What a draft has changed; nothing when it has changed nothing.
[[nodiscard]] std::vector<KeptCorrection> correctionsOf(const DraftState& state);

/// The reading with those corrections made again, and marked as changes that were not accepted.
[[nodiscard]] DraftState withKeptCorrections(const Photo& photo, const PhotoReading& reading,
                                             const std::vector<StoredMeasure>& stored,
                                             const std::vector<KeptCorrection>& kept, const PhotoOptions& options);

/// Corrections that were not accepted, kept in a collection's folder `drafts/`, one file a photo, so that nothing is
/// lost when the machine dies. A file that cannot be written or read is as if it were not there.
class KeptDrafts {
public:
    explicit KeptDrafts(std::filesystem::path collection) : folder_(std::move(collection) / "drafts") {}

    /// Replaces what is kept of a photo; nothing kept when there are no corrections.
    void keep(const std::string& contentHash, const std::vector<KeptCorrection>& corrections) const;
    [[nodiscard]] std::vector<KeptCorrection> of(const std::string& contentHash) const;
    [[nodiscard]] bool holds(const std::string& contentHash) const;

private:
    [[nodiscard]] std::filesystem::path fileOf(const std::string& contentHash) const;

    std::filesystem::path folder_;
};

}  // namespace ringrule
