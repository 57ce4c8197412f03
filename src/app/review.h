// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "app/brood_groups.h"
#include "ringrule/judge/diets.h"
#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_rules.h"

namespace ringrule {

/// What the animals' histories say, as told after one session.
struct Review {
    std::vector<AnimalHistory> histories;
    std::vector<Date> days;    ///< on which anything was measured, newest first
    std::optional<Date> asOf;  ///< the session after which the findings were told
    JudgeRules rules;          ///< the thresholds of the collection's species file, by which all was told
    std::vector<Finding> findings;
    std::vector<Estimate> conditions;  ///< condition index of each of `histories`
    std::vector<BroodRecord> broodRecords;
    std::vector<BroodGroup> broods;
    std::vector<DietChange> dietChanges;  ///< each animal before and after its latest change of food
};

/// The review of the collection in `folder` as of the newest session up to `asOf` (absent: the newest of all). Opens
/// the collection itself, so that it may run on any thread. Throws `Error(BadStore)`.
[[nodiscard]] Review reviewOf(const std::filesystem::path& folder, std::optional<Date> asOf);

}  // namespace ringrule
