// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/measure/measurement.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

struct MeasureOptions {
    View view = View::Side;
    double distanceFromPlateMm = 0.0;  ///< of the animal's plane, as the box says; 0: not told, a usual bench is taken
};

/// Every measure of `Measurement` that the outline, midline and landmarks allow, taken along the spine in mm through
/// `scale`, each with its uncertainty from edge, landmark, scale, depth in the box and posture. Pure: moving a landmark
/// and calling it again gives the corrected measures.
[[nodiscard]] Measurement measureAnimal(const Outline& outline, const Anatomy& anatomy, const Scale& scale,
                                        const MeasureOptions& options = {});

/// The measures of a side view with the trunk's width seen in the same photo: girth takes it instead of the shape's
/// usual width. Unchanged when width or depth is not known.
[[nodiscard]] Measurement withSecondView(const Measurement& side, const Estimate& trunkWidthMm, const Scale& scale);

/// One of the landmarks by its name, to be set.
[[nodiscard]] std::optional<Landmark>& landmarkIn(Landmarks& marks, LandmarkName name);

/// The anatomy with one landmark set by hand to the point nearest to `atPx` (on the midline for stations along the
/// body, free for tips and coronet).
[[nodiscard]] Anatomy withLandmark(const Anatomy& anatomy, LandmarkName name, PixelPoint atPx);

}  // namespace ringrule
