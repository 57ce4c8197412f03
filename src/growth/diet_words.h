// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/growth/diet_effect.h"

namespace ringrule {

/// What a pair of diets showed, in words for a keeper; diets are "the first" and "the second" of the pair.
[[nodiscard]] std::string dietSentence(const DietEffects& effects, const DietEffect& pair);

}  // namespace ringrule
