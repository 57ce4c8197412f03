// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/lens.h"

#include <algorithm>
#include <cmath>

#include <Eigen/LU>

namespace ringrule {
namespace {

struct Distortion {
    Eigen::Vector2d at;
    Eigen::Matrix2d jacobian;
};

Distortion distortion(const Lens& lens, const Eigen::Vector2d& ideal) {
    const auto& [k1, k2, p1, p2, k3] = lens.distortion;
    const double x = ideal.x(), y = ideal.y(), r2 = x * x + y * y;
    const double radial = 1.0 + r2 * (k1 + r2 * (k2 + r2 * k3));
    const double slope = k1 + r2 * (2.0 * k2 + r2 * 3.0 * k3);  // d(radial) / d(r²)
    Distortion result;
    result.at << x * radial + 2.0 * p1 * x * y + p2 * (r2 + 2.0 * x * x),
        y * radial + p1 * (r2 + 2.0 * y * y) + 2.0 * p2 * x * y;
    const double mixed = 2.0 * (x * y * slope + p1 * x + p2 * y);
    result.jacobian << radial + 2.0 * x * x * slope + 2.0 * p1 * y + 6.0 * p2 * x, mixed, mixed,
        radial + 2.0 * y * y * slope + 6.0 * p1 * y + 2.0 * p2 * x;
    return result;
}

// Stored axes from upright axes for each EXIF orientation: where the photo's right and down run on the sensor.
Eigen::Matrix2d turnOf(int exifOrientation) {
    Eigen::Matrix2d turn;
    switch (exifOrientation) {
        case 2:
            turn << -1, 0, 0, 1;
            break;
        case 3:
            turn << -1, 0, 0, -1;
            break;
        case 4:
            turn << 1, 0, 0, -1;
            break;
        case 5:
            turn << 0, 1, 1, 0;
            break;
        case 6:
            turn << 0, 1, -1, 0;
            break;
        case 7:
            turn << 0, -1, -1, 0;
            break;
        case 8:
            turn << 0, -1, 1, 0;
            break;
        default:
            turn.setIdentity();
            break;
    }
    return turn;
}

bool sameProportions(const Lens& lens, int widthPx, int heightPx) {
    const double scale = static_cast<double>(heightPx) / lens.imageHeightPx;
    return std::abs(lens.imageWidthPx * scale - widthPx) <= 1.0;
}

// Whole pixels cover [−½, n − ½] in both sizes, so centres scale about −½.
Lens scaledTo(const Lens& lens, int widthPx, int heightPx) {
    const double sx = static_cast<double>(widthPx) / lens.imageWidthPx;
    const double sy = static_cast<double>(heightPx) / lens.imageHeightPx;
    Lens scaled = lens;
    scaled.focalXPx *= sx;
    scaled.focalYPx *= sy;
    scaled.centreXPx = (lens.centreXPx + 0.5) * sx - 0.5;
    scaled.centreYPx = (lens.centreYPx + 0.5) * sy - 0.5;
    scaled.imageWidthPx = widthPx;
    scaled.imageHeightPx = heightPx;
    return scaled;
}

}  // namespace

Eigen::Vector2d distorted(const Lens& lens, const Eigen::Vector2d& ideal) {
    return distortion(lens, ideal).at;
}

Eigen::Matrix2d distortionJacobian(const Lens& lens, const Eigen::Vector2d& ideal) {
    return distortion(lens, ideal).jacobian;
}

Eigen::Vector2d undistorted(const Lens& lens, const Eigen::Vector2d& recorded) {
    Eigen::Vector2d ideal = recorded;
    for (int round = 0; round < 20; ++round) {
        const Distortion now = distortion(lens, ideal);
        const Eigen::Vector2d step = now.jacobian.inverse() * (recorded - now.at);
        ideal += step;
        // Newton's error after this step is about the square of the step.
        if (step.squaredNorm() < 1e-14) break;
    }
    return ideal;
}

bool coversImage(const Lens& lens) {
    const double x = std::max(lens.centreXPx + 0.5, lens.imageWidthPx - 0.5 - lens.centreXPx) / lens.focalXPx;
    const double y = std::max(lens.centreYPx + 0.5, lens.imageHeightPx - 0.5 - lens.centreYPx) / lens.focalYPx;
    const double corner = std::hypot(x, y);
    const auto& k = lens.distortion;
    double recorded = 0.0;
    constexpr int kSteps = 2000;
    for (int i = 1; i <= kSteps && recorded < corner; ++i) {
        const double r = 2.0 * corner * i / kSteps, r2 = r * r;  // no real lens draws the image in by more than half
        if (1.0 + r2 * (3.0 * k[0] + r2 * (5.0 * k[1] + r2 * 7.0 * k[4])) <= 0.0) return false;
        recorded = r * (1.0 + r2 * (k[0] + r2 * (k[1] + r2 * k[4])));
    }
    return recorded >= corner;
}

std::optional<PhotoLens> PhotoLens::of(const Lens& lens, int widthPx, int heightPx, int exifOrientation) {
    const bool swaps = exifOrientation >= 5;
    int storedWidth = swaps ? heightPx : widthPx, storedHeight = swaps ? widthPx : heightPx;
    if (!sameProportions(lens, storedWidth, storedHeight)) {
        if (!swaps || !sameProportions(lens, widthPx, heightPx)) return std::nullopt;
        exifOrientation = 1;
        storedWidth = widthPx;
        storedHeight = heightPx;
    }
    PhotoLens view;
    view.lens_ = scaledTo(lens, storedWidth, storedHeight);
    view.scaled_ = storedWidth != lens.imageWidthPx || storedHeight != lens.imageHeightPx;
    view.turn_ = turnOf(exifOrientation);
    // Turning is about the middle of the image in both frames.
    const Eigen::Vector2d uprightMiddle(0.5 * (widthPx - 1), 0.5 * (heightPx - 1));
    const Eigen::Vector2d storedMiddle(0.5 * (storedWidth - 1), 0.5 * (storedHeight - 1));
    const Eigen::Vector2d focal(view.lens_.focalXPx, view.lens_.focalYPx);
    const Eigen::Vector2d centre(view.lens_.centreXPx, view.lens_.centreYPx);
    view.slopeFromPx_ = focal.cwiseInverse().asDiagonal() * view.turn_;
    view.slopeAtOrigin_ = (storedMiddle - view.turn_ * uprightMiddle - centre).cwiseQuotient(focal);
    view.pxFromSlope_ = view.slopeFromPx_.inverse();
    return view;
}

Eigen::Vector2d PhotoLens::rayFromPixel(PixelPoint pixel) const {
    const Eigen::Vector2d recorded = slopeFromPx_ * Eigen::Vector2d(pixel.x, pixel.y) + slopeAtOrigin_;
    return turn_.transpose() * undistorted(lens_, recorded);
}

PixelPoint PhotoLens::pixelFromRay(const Eigen::Vector2d& ray) const {
    const Eigen::Vector2d pixel = pxFromSlope_ * (distorted(lens_, turn_ * ray) - slopeAtOrigin_);
    return {pixel.x(), pixel.y()};
}

PhotoLens::RayWithJacobian PhotoLens::rayWithJacobian(PixelPoint pixel) const {
    const Eigen::Vector2d recorded = slopeFromPx_ * Eigen::Vector2d(pixel.x, pixel.y) + slopeAtOrigin_;
    const Eigen::Vector2d ideal = undistorted(lens_, recorded);
    return {turn_.transpose() * ideal, turn_.transpose() * distortionJacobian(lens_, ideal).inverse() * slopeFromPx_};
}

double PhotoLens::focalPx() const {
    return std::sqrt(lens_.focalXPx * lens_.focalYPx);
}

}  // namespace ringrule
