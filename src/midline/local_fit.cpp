// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/local_fit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <Eigen/Core>
#include <Eigen/LU>

namespace ringrule {

LocalCurve localQuadratic(std::span<const PixelPoint> points, std::span<const double> alongs, double along,
                          double reach) {
    auto from = std::lower_bound(alongs.begin(), alongs.end(), along - reach) - alongs.begin();
    auto to = std::upper_bound(alongs.begin(), alongs.end(), along + reach) - alongs.begin();
    while (to - from < 5 && (from > 0 || to < std::ssize(alongs))) {
        if (from > 0) --from;
        if (to < std::ssize(alongs)) ++to;
    }
    const double span = std::max({reach, along - alongs[static_cast<std::size_t>(from)],
                                  alongs[static_cast<std::size_t>(to - 1)] - along}) *
                        1.001;
    // Sums of weight · t^k, and of weight · t^k · coordinate.
    std::array<double, 5> moments{};
    Eigen::Matrix<double, 3, 2> right = Eigen::Matrix<double, 3, 2>::Zero();
    const double perSpan = 1.0 / span;
    for (auto i = static_cast<std::size_t>(from); i < static_cast<std::size_t>(to); ++i) {
        const double t = (alongs[i] - along) * perSpan;
        const double edge = 1.0 - std::abs(t * t * t);
        const double weight = edge * edge * edge;
        const double wt = weight * t;
        const double wtt = wt * t;
        moments[0] += weight, moments[1] += wt, moments[2] += wtt, moments[3] += wtt * t, moments[4] += wtt * t * t;
        right(0, 0) += weight * points[i].x, right(0, 1) += weight * points[i].y;
        right(1, 0) += wt * points[i].x, right(1, 1) += wt * points[i].y;
        right(2, 0) += wtt * points[i].x, right(2, 1) += wtt * points[i].y;
    }
    Eigen::Matrix3d normal;
    normal << moments[0], moments[1], moments[2], moments[1], moments[2], moments[3], moments[2], moments[3],
        moments[4];
    normal.diagonal().array() += 1e-9;
    const Eigen::Matrix<double, 3, 2> fit = normal.inverse() * right;
    LocalCurve curve;
    curve.at = {fit(0, 0), fit(0, 1)};
    curve.slope = PixelPoint{fit(1, 0), fit(1, 1)} * (1.0 / span);
    curve.bend = PixelPoint{fit(2, 0), fit(2, 1)} * (2.0 / (span * span));
    return curve;
}

}  // namespace ringrule
