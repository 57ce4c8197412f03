// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "ringrule/judge/judge_rules.h"
#include "ringrule/judge/review.h"
#include "ringrule/judge/tank_growth.h"
#include "ringrule/judge/tank_level.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule {

std::vector<Finding> reviewCollection(const Store& store, std::span<const AnimalHistory> histories, Date on,
                                      const JudgeRules& rules) {
    std::vector<Finding> findings = reviewAnimals(histories, on, rules);
    const SpeciesFile species = speciesOfCollection(store.folder());
    const auto told = std::chrono::days(rules.usual.group.toldForDays);
    for (const Tank& tank : store.tanks()) {
        const auto level = tankLevel(histories, tank.id, on, rules.usual);
        // What a tank's last session said years ago is not told anew.
        if (level && level.value().low && on - level.value().on <= told)
            findings.push_back(tankFinding(level.value(), tank.code));
        const auto growth = tankGrowth(histories, tank.id, on, species.facts, rules.usual);
        if (growth && growth.value().low && on - growth.value().on <= told)
            findings.push_back(tankGrowthFinding(growth.value(), tank.code));
    }
    sortByUrgency(findings);
    return findings;
}

}  // namespace ringrule
