// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/girth.h"

#include <cmath>

namespace ringrule {
namespace {

/// Derivatives of the perimeter by its two diameters, by central differences: the formula is smooth.
struct Slopes {
    double first, second;
};

Slopes slopesAt(double first, double second) {
    const double h = 1e-5 * (first + second);
    return {(ellipsePerimeter(first + h, second) - ellipsePerimeter(first - h, second)) / (2.0 * h),
            (ellipsePerimeter(first, second + h) - ellipsePerimeter(first, second - h)) / (2.0 * h)};
}

}  // namespace

double ellipsePerimeter(double firstDiameter, double secondDiameter) {
    const double a = 0.5 * firstDiameter;
    const double b = 0.5 * secondDiameter;
    if (a + b <= 0.0) return 0.0;
    const double h = std::pow((a - b) / (a + b), 2);
    return M_PI * (a + b) * (1.0 + 3.0 * h / (10.0 + std::sqrt(4.0 - 3.0 * h)));
}

WidthRatio usualWidthRatio(Shape shape) {
    switch (shape) {
        case Shape::Pipefish:
            return {0.90, 0.10};
        case Shape::Seahorse:
            return {0.76, 0.10};
        case Shape::Fish:
            return {0.55, 0.20};
        case Shape::Unknown:
            break;
    }
    return {0.75, 0.25};
}

Estimate girthFromShape(const Estimate& depth, Shape shape) {
    const WidthRatio usual = usualWidthRatio(shape);
    Estimate girth;
    girth.value = ellipsePerimeter(depth.value, usual.ratio * depth.value);
    // The perimeter grows in proportion to the depth when the ratio is held.
    girth.sdRandom = girth.value / depth.value * depth.sdRandom;
    const double fromRatio = slopesAt(depth.value, usual.ratio * depth.value).second * usual.sd * depth.value;
    girth.sdShared = std::hypot(girth.value / depth.value * depth.sdShared, fromRatio);
    return girth;
}

Estimate girthFromWidth(const Estimate& depth, const Estimate& width) {
    const Slopes slopes = slopesAt(depth.value, width.value);
    Estimate girth;
    girth.value = ellipsePerimeter(depth.value, width.value);
    girth.sdRandom = std::hypot(slopes.first * depth.sdRandom, slopes.second * width.sdRandom);
    // One scale for both: its error adds up in full.
    girth.sdShared = slopes.first * depth.sdShared + slopes.second * width.sdShared;
    return girth;
}

}  // namespace ringrule
