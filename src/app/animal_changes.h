// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/records/store.h"

namespace ringrule {

// Changes of animals that take several records. Each runs inside the caller's transaction and throws `Error`.

/// The tank of this code; made when there is none.
[[nodiscard]] TankId tankOfCode(Store& store, const std::string& code);

/// Moves an animal to another tank on a day: the stays that go on end there. Throws `Error(BadData)` when it is in that
/// tank already, or when a stay that goes on began later than that day.
void moveAnimal(Store& store, AnimalId animal, const std::string& tankCode, Date on);

/// Gives everything of `from` (readings and their corrections, notes, food, decisions, young) to `into` and takes
/// `from` out. Of stays, diets and states that both have at one time, those of `into` stand. Throws `Error(BadData)`
/// when the two are one animal, or two species.
void mergeAnimals(Store& store, AnimalId from, AnimalId into);

/// Makes a new animal of this code that is like `animal` but for name and card, and gives it the readings of sessions
/// from a day on; tank and diet of that day go on for both. Throws `Error(BadData)` when no reading moves, or all do.
AnimalId splitAnimal(Store& store, AnimalId animal, Date from, const std::string& newCode);

}  // namespace ringrule
