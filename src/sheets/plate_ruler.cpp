// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/plate_ruler.h"

namespace ringrule {
namespace {

// Whether a number at this place of the scale would crowd a marker's quiet zone.
bool markerNear(const PlateLayout& plate, PlateScale scale, double alongMm, double roomMm) {
    const bool left = scale == PlateScale::Left;
    return std::any_of(plate.markers.begin(), plate.markers.end(), [&](const PlateMarker& marker) {
        const bool thatRim = left ? marker.centreMm.x < 0.5 * plate.widthMm : marker.centreMm.y > 0.5 * plate.heightMm;
        const double at = left ? marker.centreMm.y : marker.centreMm.x;
        return thatRim && std::abs(at - alongMm) < marker.sideMm * 2.0 / 3.0 + roomMm;
    });
}

}  // namespace

std::vector<int> numbersOn(const PlateLayout& plate, PlateScale scale) {
    const bool left = scale == PlateScale::Left;
    const PlateRuler ruler(std::min(plate.widthMm, plate.heightMm));
    const double room = (left ? 1.5 : 3.5) * ruler.unitMm;  // numbers are wider than high
    std::vector<int> numbers;
    for (int mm = 10; mm <= static_cast<int>(left ? plate.heightMm : plate.widthMm) - ruler.endMm(); mm += 10)
        if (mm >= ruler.endMm() && !markerNear(plate, scale, mm, room)) numbers.push_back(mm);
    return numbers;
}

}  // namespace ringrule
