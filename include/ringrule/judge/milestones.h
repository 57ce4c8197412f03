// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/husbandry/species.h"
#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"

namespace ringrule {

/// When an animal reaches a milestone of its species.
struct MilestoneDate {
    AnimalId animal;
    std::string animalCode;
    SpeciesMilestone milestone;
    bool told = false;             ///< whether a day can be told at all
    bool reached = false;          ///< reached by the day asked
    std::optional<Date> earliest;  ///< 95 % interval; an absent end is open
    std::optional<Date> expected;
    std::optional<Date> latest;
    std::string sentence;  ///< the day with its interval, what it rests on, or why it cannot be told
};

/// The milestones of every animal that is still there on a day, from what was seen up to then: those by age from the
/// hatch date and its uncertainty, those by length from the animal's growth or, when it was seen too seldom, from its
/// place in its group. In the order of `animals`, then of the species' milestones.
[[nodiscard]] std::vector<MilestoneDate> milestonesOf(std::span<const AnimalHistory> animals, Date on,
                                                      const std::vector<SpeciesFacts>& species,
                                                      const JudgeOptions& options = {});

}  // namespace ringrule
