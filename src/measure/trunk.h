// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "measure/body_in_mm.h"

namespace ringrule {

/// The trunk's greatest depth and where it is.
struct TrunkDepth {
    double depthMm = 0.0;
    double alongMm = 0.0;
};

/// Greatest depth between two places, of a profile smoothed over a hundredth of the body's length: the crest of a ring
/// counts, the noise of a single chord does not. 0 when no chord lies between them.
[[nodiscard]] TrunkDepth greatestDepth(const BodyInMm& body, double fromMm, double toMm);

/// The greatest change of depth within a hundredth of the body's length, between two places, in mm. A body swells and
/// narrows gently; a fin that was taken into the outline begins at once.
[[nodiscard]] double greatestStepMm(const BodyInMm& body, double fromMm, double toMm);

/// Deepest deviation of one side's outline from the straight line between its points at two places, in mm: positive
/// when the outline runs inside the line. `start` is the first point where the outline hides it. Not finite when there
/// is too little outline between them.
[[nodiscard]] double hollowMm(const BodyInMm& body, double fromMm, double toMm, bool leftSide,
                              const std::optional<AnimalPoint>& start = {});

/// Turn of the midline between two places, in degrees.
[[nodiscard]] double turnDeg(const BodyInMm& body, double fromMm, double toMm);

}  // namespace ringrule
