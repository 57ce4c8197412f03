// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// A rough way through the middle of a body, from one end to the other.
struct MedialPath {
    std::vector<PixelPoint> pathPx;   ///< empty when the outline has no long axis
    std::vector<double> halfWidthPx;  ///< distance to the border at each point
    double greatestHalfWidthPx = 0.0;
    double farthestAsidePx = 0.0;  ///< longest way inside the body from the path to a place off it: a second body's arm
};

/// The path between the two points of the body that lie farthest from each other inside it (two sweeps of geodesic
/// distance), drawn to the middle by a cost that falls with the square of the distance to the border.
[[nodiscard]] MedialPath medialPath(const Outline& outline);

}  // namespace ringrule
