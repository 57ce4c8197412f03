// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace ringrule {

/// What a look at every page and every photo of a collection found.
struct Verification {
    int photos = 0;                     ///< listed in the collection
    std::vector<std::string> troubles;  ///< a sentence for each original that is missing or altered
    /// A sentence for records of an older version that would be refused now: an animal in two tanks at once, a length
    /// that no animal has. Nothing is lost; a keeper corrects them.
    std::vector<std::string> toCorrect;
    std::vector<std::string> notes;     ///< what is odd and harms nothing: a file that no photo is listed for
    [[nodiscard]] bool whole() const { return troubles.empty(); }
};

/// Reads the database whole and every original, looks for records that cannot be, and compares each with its hash. `progress` gets the fraction done;
/// false stops. Changes nothing. Throws `Error(BadStore)` when the database is damaged, `Error(Stopped)`.
[[nodiscard]] Verification verifyCollection(const std::filesystem::path& folder,
                                            const std::function<bool(double)>& progress = {});

}  // namespace ringrule
