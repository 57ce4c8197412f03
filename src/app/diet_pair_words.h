// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/growth/diet_effect.h"

namespace ringrule {

/// What a pair of diets showed, in the language that is spoken, with the diets' names: what `pair.sentence` says in
/// English of "the first" and "the second". Figures in mm a day or % a day, as `effects.unit` says.
[[nodiscard]] QString dietPairSentence(const DietEffects& effects, const DietEffect& pair, const QString& firstDiet,
                                       const QString& secondDiet);

}  // namespace ringrule
