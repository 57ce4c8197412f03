// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// A curve near one place: position, first and second derivative by arc length.
struct LocalCurve {
    PixelPoint at;
    PixelPoint slope;
    PixelPoint bend;
};

/// The quadratic through points around `along`, weighted by the tricube of distance over `reach` (local regression
/// after Cleveland 1979, J. Am. Stat. Assoc. 74:829). Quadratic, because a mean or a line draws a curved body to the
/// inside of its curve and so shortens it. Precondition: `alongs` rises, same count as `points`, at least four.
[[nodiscard]] LocalCurve localQuadratic(std::span<const PixelPoint> points, std::span<const double> alongs,
                                        double along, double reach);

}  // namespace ringrule
