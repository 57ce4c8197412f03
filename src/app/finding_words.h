// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/judge/diets.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// What a finding says: the engine's own sentence in English; in another language one made of its figures.
[[nodiscard]] QString findingSentence(const Finding& finding);

/// The same of an animal before and after a change of food.
[[nodiscard]] QString dietChangeSentence(const DietChange& change);

/// Hyphens before figures as minus signs.
[[nodiscard]] QString withMinusSigns(QString text);

/// A signed number with its interval: "behind" and "ahead" must not be confused.
[[nodiscard]] QString signedNumber(const Estimate& by, const std::string& unit);

}  // namespace ringrule
