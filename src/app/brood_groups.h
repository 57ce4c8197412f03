// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "ringrule/husbandry/brood.h"
#include "ringrule/judge/finding.h"
#include "ringrule/sheets/chart.h"

namespace ringrule {

/// A brood with what is recorded of it.
struct BroodRecord {
    Brood brood;
    std::vector<BroodEvent> events;  ///< in order of time
};

/// When a birth is to be expected.
struct BirthDue {
    Date from;
    Date until;
    std::string source;  ///< of how long a father carries
};

/// A brood as the brood page shows it: one that is on record, or animals of one species that hatched on one day.
struct BroodGroup {
    std::string code;
    std::string species;
    std::optional<AnimalId> father;
    std::optional<AnimalId> mother;
    std::optional<Date> bornOn;
    std::optional<int> young;  ///< born, or else first counted
    std::vector<BroodEvent> events;
    std::vector<AnimalId> animals;  ///< of this brood in the collection
    int measured = 0;               ///< of them in the newest session that saw any
    double meanLengthMm = 0.0;      ///< of those; 0: none
    double lengthSpreadMm = 0.0;    ///< 1.96 standard deviations between them
    std::optional<BirthDue> due;    ///< while it is carried
};

/// Broods on record first, newest birth first, then those known by their hatch day only (two animals or more), as they
/// stand on a day.
[[nodiscard]] std::vector<BroodGroup> broodGroups(std::span<const AnimalHistory> histories,
                                                  std::span<const BroodRecord> records, Date asOf);

/// Mean length of each brood against age, session by session, the chosen one picked out.
[[nodiscard]] Chart broodChart(std::span<const AnimalHistory> histories, std::span<const BroodGroup> broods,
                               int chosen);

}  // namespace ringrule
