// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include <Eigen/Core>
#include <Eigen/LU>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// The 3×3 homography that takes `from[i]` to `to[i]` with the least algebraic error, by the direct linear transform
/// over normalised points (Hartley & Zisserman, Multiple View Geometry, 2nd ed., algorithm 4.2). Nothing when fewer
/// than four pairs are given or they do not determine it (points on one line, or all in one place).
[[nodiscard]] std::optional<Eigen::Matrix3d> fitHomography(std::span<const Eigen::Vector2d> from,
                                                           std::span<const Eigen::Vector2d> to);

/// A projective map from one plane to another: x' ~ H x.
template <class From, class To>
class PlaneMap {
public:
    PlaneMap() = default;
    explicit PlaneMap(const Eigen::Matrix3d& matrix) : matrix_(matrix) {}

    [[nodiscard]] Point<To> operator()(Point<From> p) const {
        const Eigen::Vector3d mapped = matrix_ * Eigen::Vector3d(p.x, p.y, 1.0);
        return {mapped.x() / mapped.z(), mapped.y() / mapped.z()};
    }

    /// d(x', y') / d(x, y).
    [[nodiscard]] Eigen::Matrix2d jacobian(Point<From> p) const {
        const Eigen::Vector3d mapped = matrix_ * Eigen::Vector3d(p.x, p.y, 1.0);
        const Eigen::Vector2d at = mapped.head<2>() / mapped.z();
        return (matrix_.topLeftCorner<2, 2>() - at * matrix_.block<1, 2>(2, 0)) / mapped.z();
    }

    [[nodiscard]] PlaneMap<To, From> inverse() const { return PlaneMap<To, From>(matrix_.inverse()); }
    [[nodiscard]] const Eigen::Matrix3d& matrix() const { return matrix_; }

private:
    Eigen::Matrix3d matrix_ = Eigen::Matrix3d::Identity();
};

}  // namespace ringrule
