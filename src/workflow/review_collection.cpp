// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "ringrule/judge/judge_rules.h"
#include "ringrule/judge/review.h"
#include "ringrule/judge/tank_level.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {

std::vector<Finding> reviewCollection(const Store& store, std::span<const AnimalHistory> histories, Date on,
                                      const JudgeRules& rules) {
    std::vector<Finding> findings = reviewAnimals(histories, on, rules);
    for (const Tank& tank : store.tanks()) {
        const auto level = tankLevel(histories, tank.id, on, rules.usual);
        // What a tank's last session said years ago is not told anew.
        if (level && level.value().low && on - level.value().on <= std::chrono::days(rules.usual.group.toldForDays))
            findings.push_back(tankFinding(level.value(), tank.code));
    }
    sortByUrgency(findings);
    return findings;
}

}  // namespace ringrule
