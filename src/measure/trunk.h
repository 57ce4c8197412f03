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

/// How far one side's outline strays from the straight line between two of its points, in mm: positive when it runs
/// inside the line.
struct Hollow {
    double mm = 0.0;       ///< the deepest of all; not finite when there is too little outline between the points
    double otherMm = 0.0;  ///< the deepest to the other side of the line: 0 when there is none
};

/// Of one side between two places; `start` is the first point where the outline hides it.
[[nodiscard]] Hollow hollowOf(const BodyInMm& body, double fromMm, double toMm, bool leftSide,
                              const std::optional<AnimalPoint>& start = {});

/// Turn of the midline between two places, in degrees.
[[nodiscard]] double turnDeg(const BodyInMm& body, double fromMm, double toMm);

}  // namespace ringrule
