// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/midline/landmarks.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// Perimeter of an ellipse by its two diameters: Ramanujan's second formula, π(a + b)(1 + 3h / (10 + √(4 − 3h))) with
/// h = ((a − b) / (a + b))² (Ramanujan 1914); exact to 1e-9 for cross-sections of fish.
[[nodiscard]] double ellipsePerimeter(double firstDiameter, double secondDiameter);

/// Width over depth of a trunk's cross-section by shape. Common practice, no source; its spread is wide on purpose.
struct WidthRatio {
    double ratio = 1.0;
    double sd = 0.2;
};
[[nodiscard]] WidthRatio usualWidthRatio(Shape shape);

/// Girth of a trunk of this depth by the shape's usual width. What is not known of the width is the same in all photos
/// of one animal: it goes to the shared part.
[[nodiscard]] Estimate girthFromShape(const Estimate& depth, Shape shape);

/// Girth of a trunk of this depth and this width, both measured.
[[nodiscard]] Estimate girthFromWidth(const Estimate& depth, const Estimate& width);

}  // namespace ringrule
