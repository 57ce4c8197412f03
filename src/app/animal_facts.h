// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "app/collection.h"

namespace ringrule {

/// What is known of an animal in one line: name, species, sex, day of hatching, tank, diet, card; what is not known is
/// left out.
[[nodiscard]] QString animalFacts(const Collection& collection, AnimalId animal);

}  // namespace ringrule
