// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optics/camera_fit.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// Relative standard deviation of lengths on the animal's plane from the lens's own: its covariance carried through the
/// fit of the camera's pose, root mean square over lengths about the plate. Precondition: `box.lens` and
/// `box.lensCovariance`, the fit made with that lens.
[[nodiscard]] double lensDoubt(const CameraFit& fit, const Box& box, const FoundPlate& plate, int imageWidthPx,
                               int imageHeightPx);

}  // namespace ringrule
