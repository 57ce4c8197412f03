// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/husbandry/care.h"

namespace ringrule {

/// Adds to each animal's own spells what its tank ate while it stayed there, except for days on which the animal has a
/// spell of its own.
void addTankDiets(std::vector<DietSpell>& own, const std::vector<TankDietSpell>& ofTanks,
                  const std::vector<Stay>& stays);

}  // namespace ringrule
