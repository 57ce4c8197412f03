// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/radial_bend.h"

#include <algorithm>
#include <cmath>

namespace ringrule {
namespace {

// Focal length over the photo's long side: a phone's main camera has 0.75, a small camera with some zoom 1 to 2.
constexpr double kUsualFocal = 1.2;

}  // namespace

PixelPoint RadialBend::straight(PixelPoint seen) const {
    const PixelPoint offset = seen - centrePx;
    const double square = dot(offset, offset) / (focalPx * focalPx);
    return centrePx + offset * (1.0 + square * (coefficients[0] + square * coefficients[1]));
}

PixelPoint RadialBend::seen(PixelPoint straight) const {
    const PixelPoint offset = straight - centrePx;
    const double target = norm(offset) / focalPx;
    if (target == 0.0) return straight;
    // Newton on r (1 + a r² + b r⁴) = target, never past the place where it would fold back.
    double r = target;
    for (int round = 0; round < 8; ++round) {
        const double square = r * r;
        const double slope = 1.0 + square * (3.0 * coefficients[0] + 5.0 * square * coefficients[1]);
        const double miss = r * (1.0 + square * (coefficients[0] + square * coefficients[1])) - target;
        r = std::clamp(r - miss / std::max(slope, 0.2), 0.5 * target, 2.0 * target);
    }
    return centrePx + offset * (r / target);
}

Eigen::Matrix2d RadialBend::jacobian(PixelPoint seen) const {
    const Eigen::Vector2d offset = Eigen::Vector2d(seen.x - centrePx.x, seen.y - centrePx.y) / focalPx;
    const double square = offset.squaredNorm();
    return (1.0 + square * (coefficients[0] + square * coefficients[1])) * Eigen::Matrix2d::Identity() +
           2.0 * (coefficients[0] + 2.0 * square * coefficients[1]) * offset * offset.transpose();
}

RadialBend noBend(int imageWidthPx, int imageHeightPx) {
    return {{0.5 * (imageWidthPx - 1), 0.5 * (imageHeightPx - 1)},
            kUsualFocal * std::max(imageWidthPx, imageHeightPx),
            {}};
}

}  // namespace ringrule
