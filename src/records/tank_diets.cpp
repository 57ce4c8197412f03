// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/tank_diets.h"

#include <algorithm>

namespace ringrule {
namespace {

constexpr std::chrono::days kDay{1};

Date endOf(const std::optional<Date>& to) {
    return to.value_or(Date::max());
}

std::optional<Date> dayOrNone(Date to) {
    return to == Date::max() ? std::nullopt : std::optional(to);
}

/// What is left of a spell when the days of `taken` are cut out of it.
std::vector<DietSpell> without(const DietSpell& spell, const DietSpell& taken) {
    if (taken.from > endOf(spell.to) || endOf(taken.to) < spell.from) return {spell};
    std::vector<DietSpell> left;
    if (taken.from > spell.from) left.push_back({spell.animal, spell.diet, spell.from, taken.from - kDay});
    if (endOf(taken.to) < endOf(spell.to)) left.push_back({spell.animal, spell.diet, *taken.to + kDay, spell.to});
    return left;
}

}  // namespace

void addTankDiets(std::vector<DietSpell>& own, const std::vector<TankDietSpell>& ofTanks,
                  const std::vector<Stay>& stays) {
    std::vector<DietSpell> added;
    for (const Stay& stay : stays) {
        for (const TankDietSpell& fed : ofTanks) {
            const Date from = std::max(stay.from, fed.from);
            const Date to = std::min(endOf(stay.to), endOf(fed.to));
            if (fed.tank != stay.tank || to < from) continue;
            std::vector<DietSpell> pieces{{stay.animal, fed.diet, from, dayOrNone(to)}};
            for (const DietSpell& spell : own) {
                if (spell.animal != stay.animal) continue;
                std::vector<DietSpell> left;
                for (const DietSpell& piece : pieces) {
                    const auto rest = without(piece, spell);
                    left.insert(left.end(), rest.begin(), rest.end());
                }
                pieces = std::move(left);
            }
            added.insert(added.end(), pieces.begin(), pieces.end());
        }
    }
    own.insert(own.end(), added.begin(), added.end());
}

}  // namespace ringrule
