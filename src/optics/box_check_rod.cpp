// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <cstddef>

#include <Eigen/Dense>

#include "ringrule/optics/box_check.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {
namespace {

constexpr double kLeastSlenderness = 6.0;  // length over thickness
// What is not known of an end's make: chamfered, rounded, sawn askew. Relative to the slant that is taken off.
constexpr double kEndDoubt = 0.25;
// One boundary point's place on a rod's end, which the fit over the end averages; also what a rod's own length is
// known to.
constexpr double kEndSdPx = 0.1;

Refusal noRod() {
    return {
        "no-rod",
        "No dark straight rod was found before the plate. Hang it alone on the animal's plane, away from the markers."};
}

// A rod's outline in its own axes: s along it, t across, both from its middle.
struct OwnAxes {
    Eigen::Vector2d middle;
    Eigen::Vector2d along;
    std::vector<Eigen::Vector2d> points;
};

OwnAxes ownAxesOf(const std::vector<Eigen::Vector2d>& points) {
    OwnAxes axes;
    axes.middle = Eigen::Vector2d::Zero();
    for (const auto& p : points) axes.middle += p / static_cast<double>(points.size());
    Eigen::Matrix2d spread = Eigen::Matrix2d::Zero();
    for (const auto& p : points) spread += (p - axes.middle) * (p - axes.middle).transpose();
    axes.along = Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(spread).eigenvectors().col(1);
    const Eigen::Vector2d across(-axes.along.y(), axes.along.x());
    for (const auto& p : points) axes.points.emplace_back(axes.along.dot(p - axes.middle), across.dot(p - axes.middle));
    return axes;
}

// The two long sides: where they are across the rod, and how far they stray from that.
struct Sides {
    double middle = 0.0;
    double thickness = 0.0;
    double bend = 0.0;
};

std::optional<Sides> sidesOf(const OwnAxes& axes, double halfLength) {
    std::vector<double> right, left;
    for (const auto& p : axes.points) {
        if (std::abs(p.x()) < 0.8 * halfLength) (p.y() > 0.0 ? right : left).push_back(p.y());
    }
    if (right.size() < 5 || left.size() < 5) return std::nullopt;
    const double r = median(right), l = median(left);
    const auto stray = [](std::vector<double>& t) {
        std::sort(t.begin(), t.end());
        const std::size_t edge = t.size() / 20;
        return t[t.size() - 1 - edge] - t[edge];
    };
    return Sides{0.5 * (r + l), r - l, 0.5 * std::max(stray(right), stray(left))};
}

// Where the end on the side `sign` crosses the rod's axis: a parabola through its middle part, so that flat, askew and
// rounded ends all count to their middle.
std::optional<double> endOf(const OwnAxes& axes, const Sides& sides, double sign) {
    double tip = 0.0;
    for (const auto& p : axes.points) tip = std::max(tip, sign * p.x());
    std::vector<Eigen::Vector2d> cap;
    for (const auto& p : axes.points) {
        const double t = p.y() - sides.middle;
        if (sign * p.x() > tip - sides.thickness && std::abs(t) < 0.36 * sides.thickness)
            cap.emplace_back(sign * p.x(), t);
    }
    if (cap.size() < 4) return std::nullopt;
    Eigen::MatrixXd terms(static_cast<Eigen::Index>(cap.size()), 3);
    Eigen::VectorXd along(terms.rows());
    for (Eigen::Index i = 0; i < terms.rows(); ++i) {
        const Eigen::Vector2d& p = cap[static_cast<std::size_t>(i)];
        terms.row(i) << 1.0, p.y(), p.y() * p.y();
        along(i) = p.x();
    }
    return Eigen::VectorXd(terms.colPivHouseholderQr().solve(along))(0);
}

// Tangent of the slant along the rod at which the plane is seen at that point: how far the plate behind appears
// displaced, over its distance.
double slantAlong(const Eigen::Vector2d& at, const Eigen::Vector2d& along, const Box& box, const Scale& scale) {
    const double height = box.animalPlane.distanceFromPlateMm;
    if (height < 0.5) return 0.0;
    const PlatePoint behind = scale.plateFromPixel(scale.pixelFromAnimal({at.x(), at.y()}));
    return std::abs(along.dot(Eigen::Vector2d(behind.x, behind.y) - at)) / height;
}

}  // namespace

Outcome<RodReading> readRod(const std::vector<PixelPoint>& boundaryPx, const Box& box, const Scale& scale,
                            RodShape shape) {
    if (boundaryPx.size() < 20) return noRod();
    std::vector<Eigen::Vector2d> points;
    for (const PixelPoint p : boundaryPx) {
        const AnimalPoint at = scale.animalFromPixel(p);
        points.emplace_back(at.x, at.y);
    }
    const OwnAxes axes = ownAxesOf(points);
    double halfLength = 0.0;
    for (const auto& p : axes.points) halfLength = std::max(halfLength, std::abs(p.x()));
    const auto sides = sidesOf(axes, halfLength);
    if (!sides || 2.0 * halfLength < kLeastSlenderness * sides->thickness) return noRod();
    if (sides->bend > 0.15 * sides->thickness + 0.002 * halfLength) return noRod();
    const auto front = endOf(axes, *sides, 1.0), back = endOf(axes, *sides, -1.0);
    if (!front || !back) return noRod();

    const double radius = shape == RodShape::Round ? 0.5 * sides->thickness : 0.0;
    const double overFront = radius * slantAlong(axes.middle + *front * axes.along, axes.along, box, scale);
    const double overBack = radius * slantAlong(axes.middle - *back * axes.along, axes.along, box, scale);
    RodReading reading;
    const double length = *front + *back - overFront - overBack;
    const double mmPerPx = scale.mmPerPx(boundaryPx.front());
    reading.lengthMm = {length, std::hypot(length * scale.relativeSdRandom(), std::sqrt(2.0) * kEndSdPx * mmPerPx),
                        std::hypot(length * scale.relativeSdShared(), kEndDoubt * (overFront + overBack))};
    reading.thicknessMm = sides->thickness;
    reading.bendMm = sides->bend;
    return reading;
}

}  // namespace ringrule
