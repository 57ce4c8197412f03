// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/husbandry/species.h"

#include <algorithm>

namespace ringrule {

SpeciesFacts factsOf(const std::vector<SpeciesFacts>& all, std::string_view species) {
    const auto named = [&](std::string_view name) {
        return std::find_if(all.begin(), all.end(), [&](const SpeciesFacts& one) { return one.species == name; });
    };
    SpeciesFacts facts;
    if (const auto own = named(species); own != all.end()) {
        facts = *own;
    }
    facts.species = species;
    if (const auto rest = named(""); rest != all.end()) {
        for (const SpeciesMilestone& usual : rest->milestones) {
            const bool has = std::any_of(facts.milestones.begin(), facts.milestones.end(),
                                         [&](const SpeciesMilestone& one) { return one.name == usual.name; });
            if (!has) {
                facts.milestones.push_back(usual);
            }
        }
    }
    return facts;
}

}  // namespace ringrule
