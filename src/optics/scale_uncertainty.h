// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optics/camera_fit.h"
#include "optics/plate_homography.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/water.h"

namespace ringrule {

/// Relative standard deviations of a length on the animal's plane.
struct ScaleUncertainty {
    double random = 0.0;  ///< from photo to photo
    double shared = 0.0;  ///< of all photos of one box
};

/// Layers from the camera to a plane `heightMm` before the plate. Without media the whole way was fitted as air; the
/// animal's water is then taken to have the index of sea water.
[[nodiscard]] FlatLayers layersBefore(FlatLayers toPlate, double heightMm, bool mediaKnown);

/// Relative excess of lengths read off the plate over those on the animal's plane before it, by similar triangles over
/// reduced distances. Precondition: `box.media`.
[[nodiscard]] double depthBias(const Box& box);

/// Corner noise carried through the fit; depth of the animal's plane, distance and print of the plate, and the angle to
/// the window at which it may stand.
[[nodiscard]] ScaleUncertainty scaleUncertainty(const CameraFit& fit, const Box& box);

/// The same without a lens: what distortion, and without media what depth and refraction, could have done is added.
[[nodiscard]] ScaleUncertainty scaleUncertainty(const PlateHomography& plane, const Box& box, const FoundPlate& plate,
                                                int imageWidthPx, int imageHeightPx);

}  // namespace ringrule
