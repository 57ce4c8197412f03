// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/small_plate.h"

#include <algorithm>
#include <array>

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

FoundPlate asFitted(const FoundPlate& plate, const Box& box, const Scale& scale) {
    FoundPlate fitted = plate;
    for (FoundMarker& found : fitted.markers) {
        const auto& markers = box.plate.markers;
        const auto printed = std::find_if(markers.begin(), markers.end(),
                                          [&](const PlateMarker& marker) { return marker.id == found.id; });
        if (printed == markers.end()) continue;
        const double half = 0.5 * printed->sideMm;
        const std::array<PlatePoint, 4> corners{{{-half, -half}, {half, -half}, {half, half}, {-half, half}}};
        for (std::size_t k = 0; k < 4; ++k) found.cornersPx[k] = scale.pixelFromPlate(printed->centreMm + corners[k]);
    }
    return fitted;
}

}  // namespace ringrule
