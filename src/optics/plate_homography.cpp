// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/plate_homography.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include "optics/plate_markers.h"

namespace ringrule {
namespace {

// Corners are never better than this, however well few of them happen to agree.
constexpr double kLeastCornerSdPx = 0.05;

struct Corners {
    std::vector<PixelPoint> seenPx;
    std::vector<Eigen::Vector2d> platesMm;
};

Corners cornersOf(const PlateLayout& plate, const std::vector<FoundMarker>& markers) {
    Corners corners;
    for (const FoundMarker& marker : markers) {
        const PlateMarker* printed = markerOfPlate(plate, marker.id);
        if (printed == nullptr) continue;
        const auto cornersMm = markerCornersMm(*printed);
        for (std::size_t k = 0; k < 4; ++k) {
            corners.seenPx.push_back(marker.cornersPx[k]);
            corners.platesMm.emplace_back(cornersMm[k].x, cornersMm[k].y);
        }
    }
    return corners;
}

// The homography that goes best with a bend, and by how much it misses each corner (x, y in turn), in straight pixels.
struct Bent {
    PlaneMap<PlateFrame, PixelFrame> straightFromPlate;
    Eigen::VectorXd missesPx;
};

std::optional<Bent> bentFit(const Corners& corners, const RadialBend& bend) {
    std::vector<Eigen::Vector2d> straight;
    for (const PixelPoint seen : corners.seenPx) {
        const PixelPoint at = bend.straight(seen);
        straight.emplace_back(at.x, at.y);
    }
    const auto matrix = fitHomography(corners.platesMm, straight);
    if (!matrix) return std::nullopt;
    Bent result{PlaneMap<PlateFrame, PixelFrame>(*matrix), Eigen::VectorXd(2 * std::ssize(straight))};
    for (std::size_t i = 0; i < straight.size(); ++i) {
        const PixelPoint at = result.straightFromPlate({corners.platesMm[i].x(), corners.platesMm[i].y()});
        result.missesPx.segment<2>(2 * static_cast<Eigen::Index>(i)) = Eigen::Vector2d(at.x, at.y) - straight[i];
    }
    return result;
}

struct FittedBend {
    RadialBend bend;
    Bent fit;
    Eigen::Matrix2d covariance = Eigen::Matrix2d::Zero();
};

RadialBend moved(RadialBend bend, const Eigen::Vector2d& by) {
    bend.coefficients[0] += by(0);
    bend.coefficients[1] += by(1);
    return bend;
}

double cornerVarianceOf(const Bent& fit) {
    const double squares = fit.missesPx.squaredNorm() / static_cast<double>(fit.missesPx.size() - 8);
    return std::max(squares, kLeastCornerSdPx * kLeastCornerSdPx);
}

// How the misses change with each coefficient, the homography following it.
std::optional<Eigen::MatrixX2d> slopesOf(const Corners& corners, const RadialBend& bend, const Bent& fit) {
    constexpr double kStep = 1e-4;
    Eigen::MatrixX2d slopes(fit.missesPx.size(), 2);
    for (Eigen::Index j = 0; j < 2; ++j) {
        const auto stepped = bentFit(corners, moved(bend, kStep * Eigen::Vector2d::Unit(j)));
        if (!stepped) return std::nullopt;
        slopes.col(j) = (stepped->missesPx - fit.missesPx) / kStep;
    }
    return slopes;
}

// Gauss–Newton in the two coefficients (variable projection, Golub & Pereyra 1973, SIAM J. Numer. Anal. 10:413); what
// lenses usually do counts as two more observations.
std::optional<FittedBend> fittedBend(const Corners& corners, RadialBend bend) {
    auto fit = bentFit(corners, bend);
    if (!fit) return std::nullopt;
    Eigen::Matrix2d information;
    for (int round = 0; round < 8; ++round) {
        const auto slopes = slopesOf(corners, bend, *fit);
        if (!slopes) return std::nullopt;
        const double prior = cornerVarianceOf(*fit) / (kUsualBendSd * kUsualBendSd);
        information = slopes->transpose() * *slopes + prior * Eigen::Matrix2d::Identity();
        const Eigen::Vector2d here(bend.coefficients[0], bend.coefficients[1]);
        const Eigen::Vector2d by = -information.ldlt().solve(slopes->transpose() * fit->missesPx + prior * here);
        bend = moved(bend, by);
        auto there = bentFit(corners, bend);
        if (!there) return std::nullopt;
        fit = std::move(there);
        if (by.norm() < 1e-6) break;
    }
    return FittedBend{bend, *fit, cornerVarianceOf(*fit) * information.inverse()};
}

}  // namespace

PlatePoint PlateHomography::plateFromPixel(PixelPoint pixel) const {
    return plateFromStraight(bend.straight(pixel));
}

PixelPoint PlateHomography::pixelFromPlate(PlatePoint point) const {
    return bend.seen(straightFromPlate(point));
}

Eigen::Matrix2d PlateHomography::plateFromPixelJacobian(PixelPoint pixel) const {
    return plateFromStraight.jacobian(bend.straight(pixel)) * bend.jacobian(pixel);
}

AnimalPoint PlateHomography::animalFromPixel(PixelPoint pixel) const {
    const PlatePoint at = footMm + (plateFromPixel(pixel) - footMm) * animalFromPlate;
    return {at.x, at.y};
}

PixelPoint PlateHomography::pixelFromAnimal(AnimalPoint point) const {
    return pixelFromPlate(footMm + (PlatePoint{point.x, point.y} - footMm) * (1.0 / animalFromPlate));
}

std::optional<PlateHomography> fitPlateHomography(const PlateLayout& plate, const std::vector<FoundMarker>& markers,
                                                  int imageWidthPx, int imageHeightPx,
                                                  const std::optional<Eigen::Vector2d>& bend) {
    const Corners corners = cornersOf(plate, markers);
    if (corners.seenPx.size() < 8) return std::nullopt;
    const RadialBend straight = noBend(imageWidthPx, imageHeightPx);
    std::optional<FittedBend> fitted;
    if (!bend)
        fitted = fittedBend(corners, straight);
    else if (auto fit = bentFit(corners, moved(straight, *bend)))
        fitted = FittedBend{moved(straight, *bend), std::move(*fit)};
    if (!fitted) return std::nullopt;

    PlateHomography result;
    result.bend = fitted->bend;
    result.bendCovariance = fitted->covariance;
    result.straightFromPlate = fitted->fit.straightFromPlate;
    result.plateFromStraight = result.straightFromPlate.inverse();
    result.footMm = result.plateFromPixel(result.bend.centrePx);
    PixelPoint mean;
    const auto count = static_cast<double>(corners.seenPx.size());
    for (const PixelPoint seen : corners.seenPx) mean = mean + seen * (1.0 / count);
    double spread = 0.0;
    for (const PixelPoint seen : corners.seenPx) spread += dot(seen - mean, seen - mean);
    result.rmsPx = std::sqrt(fitted->fit.missesPx.squaredNorm() / count);
    // A similarity's scale has variance sd² / spread; the homography's six other parameters share the corners with it,
    // which costs up to a factor of two in the plate's middle.
    const double cornerSdPx = std::sqrt(fitted->fit.missesPx.squaredNorm() / (2.0 * count - 8.0));
    result.relativeSd = 2.0 * cornerSdPx / std::sqrt(spread);
    return result;
}

}  // namespace ringrule
