// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/judge/diets.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// What a finding says: the engine's own sentence in English; in another language one made of its figures.
[[nodiscard]] QString findingSentence(const Finding& finding);

/// What kind of finding it is, in words; of a doubted measure also whose it likely is, where the session tells it.
[[nodiscard]] QString findingTitle(const Finding& finding);
/// The same for a narrow list, where a "?" is beside a doubted measure.
[[nodiscard]] QString findingLine(const Finding& finding);

/// Whom it is about: the code of an animal, or "tank" and a tank's code.
[[nodiscard]] QString findingSubject(const Finding& finding);

/// What it was compared with: codes, published growth, or the animal's or tank's own past.
[[nodiscard]] QString findingComparedWith(const Finding& finding);

/// What `findingSentence` says, of an animal before and after a change of food.
[[nodiscard]] QString dietChangeSentence(const DietChange& change);

/// Hyphens before figures as minus signs.
[[nodiscard]] QString withMinusSigns(QString text);

/// A signed number with its interval: "behind" and "ahead" must not be confused.
[[nodiscard]] QString signedNumber(const Estimate& by, const std::string& unit);

}  // namespace ringrule
