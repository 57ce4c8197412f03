// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/collection.h"
#include "ringrule/sheets/animal_sheet.h"

namespace ringrule {

/// What the collection and its review say of one animal, for a page to hand on. Precondition: a review with a session.
[[nodiscard]] AnimalSheet sheetOfAnimal(const Collection& collection, AnimalId animal);

}  // namespace ringrule
