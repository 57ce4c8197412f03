// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/judge/finding.h"

namespace ringrule {

/// What a finding says: the engine's own sentence in English; in another language one made of its figures.
[[nodiscard]] QString findingSentence(const Finding& finding);

/// A signed number with its interval: "behind" and "ahead" must not be confused.
[[nodiscard]] QString signedNumber(const Estimate& by, const std::string& unit);

}  // namespace ringrule
