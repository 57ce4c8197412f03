// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "ringrule/husbandry/records.h"
#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"

namespace ringrule {

/// Findings on every animal as they would have been told after the session of `on` (later observations are not looked
/// at), most urgent first. Animals that have left by then are not reviewed. The rules are those of `docs/judgement.md`;
/// thresholds are in `JudgeOptions`.
[[nodiscard]] std::vector<Finding> reviewAnimals(std::span<const AnimalHistory> animals, Date on,
                                                 const JudgeOptions& options = {});

/// Sorts findings of one day: the most urgent first, of one kind the largest in standard deviations first.
void sortByUrgency(std::vector<Finding>& findings);

}  // namespace ringrule
