// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/geometry/plane_map.h"

#include <cassert>
#include <cmath>
#include <cstddef>

#include <Eigen/Geometry>
#include <Eigen/SVD>

namespace ringrule {
namespace {

// The similarity that moves the points' mean to the origin and their mean distance from it to √2.
std::optional<Eigen::Matrix3d> normalisation(std::span<const Eigen::Vector2d> points) {
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (const Eigen::Vector2d& p : points) mean += p;
    mean /= static_cast<double>(points.size());
    double spread = 0.0;
    for (const Eigen::Vector2d& p : points) spread += (p - mean).norm();
    spread /= static_cast<double>(points.size());
    if (!(spread > 0.0) || !std::isfinite(spread)) return std::nullopt;
    const double scale = std::sqrt(2.0) / spread;
    Eigen::Matrix3d similarity;
    similarity << scale, 0.0, -scale * mean.x(), 0.0, scale, -scale * mean.y(), 0.0, 0.0, 1.0;
    return similarity;
}

}  // namespace

std::optional<Eigen::Matrix3d> fitHomography(std::span<const Eigen::Vector2d> from,
                                             std::span<const Eigen::Vector2d> to) {
    assert(from.size() == to.size());
    if (from.size() < 4) return std::nullopt;
    const auto fromUnit = normalisation(from);
    const auto toUnit = normalisation(to);
    if (!fromUnit || !toUnit) return std::nullopt;
    Eigen::Matrix<double, Eigen::Dynamic, 9> rows(2 * static_cast<Eigen::Index>(from.size()), 9);
    for (std::size_t i = 0; i < from.size(); ++i) {
        const Eigen::RowVector3d p = (*fromUnit * from[i].homogeneous()).transpose();
        const Eigen::Vector3d q = *toUnit * to[i].homogeneous();
        const auto row = 2 * static_cast<Eigen::Index>(i);
        rows.row(row) << p, Eigen::RowVector3d::Zero(), -q.x() * p;
        rows.row(row + 1) << Eigen::RowVector3d::Zero(), p, -q.y() * p;
    }
    const Eigen::JacobiSVD<Eigen::MatrixXd> svd(rows, Eigen::ComputeFullV);
    const auto& singular = svd.singularValues();
    // A second vanishing direction means that the pairs leave the map open.
    if (singular.size() < 8 || singular(7) < 1e-9 * singular(0)) return std::nullopt;
    const Eigen::Matrix<double, 9, 1> h = svd.matrixV().col(8);
    const Eigen::Matrix3d unit = Eigen::Map<const Eigen::Matrix<double, 3, 3, Eigen::RowMajor>>(h.data());
    if (std::abs(unit.determinant()) < 1e-9) return std::nullopt;  // folds the plane into a line
    const Eigen::Matrix3d matrix = toUnit->inverse() * unit * *fromUnit;
    return matrix / matrix.norm();
}

}  // namespace ringrule
