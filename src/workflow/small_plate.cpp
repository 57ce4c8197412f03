// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/small_plate.h"

namespace ringrule {

Box enlarged(const Box& box, double factor) {
    Box large = box;
    large.plate.widthMm *= factor;
    large.plate.heightMm *= factor;
    large.plate.flatnessMm *= factor;
    for (PlateMarker& marker : large.plate.markers) {
        marker.centreMm = marker.centreMm * factor;
        marker.sideMm *= factor;
    }
    large.animalPlane.distanceFromPlateMm *= factor;
    large.animalPlane.toleranceMm *= factor;
    if (large.media) {
        large.media->cameraToWindowMm *= factor;
        large.media->windowThicknessMm *= factor;
        large.media->waterToPlateMm *= factor;
    }
    return large;
}

}  // namespace ringrule
