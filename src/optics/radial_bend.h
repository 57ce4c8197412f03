// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include <Eigen/Core>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// What an unknown lens does to a photo: straight = centre + offset (1 + a r² + b r⁴) with r = |offset| / focal, about
/// the photo's middle (the inverse radial model of Brown 1971, Photogramm. Eng. 37:855, two terms).
struct RadialBend {
    PixelPoint centrePx;
    double focalPx = 1.0;  ///< assumed: it only gives the coefficients their usual size
    std::array<double, 2> coefficients{};

    [[nodiscard]] PixelPoint straight(PixelPoint seen) const;
    /// The inverse; a point beyond the place where the bend folds back is put there.
    [[nodiscard]] PixelPoint seen(PixelPoint straight) const;
    /// d(straight) / d(seen).
    [[nodiscard]] Eigen::Matrix2d jacobian(PixelPoint seen) const;
};

/// No bend yet, for a photo of this size and a usual lens.
[[nodiscard]] RadialBend noBend(int imageWidthPx, int imageHeightPx);

/// Standard deviation of either coefficient among lenses of unknown make (common practice, no source: the corner of the
/// frame is moved by 3 % and 1 %).
inline constexpr double kUsualBendSd = 0.1;

}  // namespace ringrule
