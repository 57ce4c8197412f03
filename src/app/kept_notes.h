// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <filesystem>

namespace ringrule {

/// What a keeper typed and has not kept yet, one text a subject, in the collection's folder `drafts`: there after a
/// crash, gone once it is kept.
class KeptNotes {
public:
    explicit KeptNotes(const std::filesystem::path& collectionFolder) : folder_(collectionFolder / "drafts") {}

    /// Keeps a text; an empty one takes away what was kept. What cannot be written is not kept: it is on the screen.
    void keep(const QString& subject, const QString& text) const;
    /// Empty when nothing was kept.
    [[nodiscard]] QString of(const QString& subject) const;

private:
    [[nodiscard]] QString file() const;

    std::filesystem::path folder_;
};

}  // namespace ringrule
