// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "ringrule/husbandry/date.h"
#include "ringrule/measure/repeats.h"
#include "ringrule/records/store.h"

namespace ringrule {

/// How well photos of the same animal on the same day agree.
struct RepeatLine {
    std::string measure;  ///< "standard length", "trunk depth", "trunk width"
    Repeatability repeats;
};

struct RepeatReport {
    std::vector<RepeatLine> lines;  ///< measures of which some animal has two photos or more
    std::vector<std::string> odd;   ///< a sentence for each photo that disagrees with the animal's others of that day
};

/// Repeats within the sessions of one day: accepted measures only. Reliability compares the error with the spread among
/// the animals measured.
[[nodiscard]] RepeatReport repeatsOfDay(const Store& store, Date on);

/// The same over all sessions of one keeper (initials as the sessions carry them).
[[nodiscard]] RepeatReport repeatsOfKeeper(const Store& store, const std::string& keeper);

}  // namespace ringrule
