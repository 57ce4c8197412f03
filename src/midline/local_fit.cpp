// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/local_fit.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <Eigen/Dense>

namespace ringrule {

LocalCurve localQuadratic(std::span<const PixelPoint> points, std::span<const double> alongs, double along, double reach) {
    auto from = std::lower_bound(alongs.begin(), alongs.end(), along - reach) - alongs.begin();
    auto to = std::upper_bound(alongs.begin(), alongs.end(), along + reach) - alongs.begin();
    while (to - from < 5 && (from > 0 || to < std::ssize(alongs))) {
        if (from > 0) --from;
        if (to < std::ssize(alongs)) ++to;
    }
    const double span = std::max({reach, along - alongs[static_cast<std::size_t>(from)],
                                  alongs[static_cast<std::size_t>(to - 1)] - along}) * 1.001;
    Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
    Eigen::Matrix<double, 3, 2> right = Eigen::Matrix<double, 3, 2>::Zero();
    for (auto i = static_cast<std::size_t>(from); i < static_cast<std::size_t>(to); ++i) {
        const double t = (alongs[i] - along) / span;
        const double edge = 1.0 - std::abs(t * t * t);
        const double weight = edge * edge * edge;
        const Eigen::Vector3d row(1.0, t, t * t);
        normal.noalias() += weight * row * row.transpose();
        right.noalias() += weight * row * Eigen::RowVector2d(points[i].x, points[i].y);
    }
    normal += 1e-9 * Eigen::Matrix3d::Identity();
    const Eigen::Matrix<double, 3, 2> fit = normal.ldlt().solve(right);
    LocalCurve curve;
    curve.at = {fit(0, 0), fit(0, 1)};
    curve.slope = PixelPoint{fit(1, 0), fit(1, 1)} * (1.0 / span);
    curve.bend = PixelPoint{fit(2, 0), fit(2, 1)} * (2.0 / (span * span));
    return curve;
}

}  // namespace ringrule
