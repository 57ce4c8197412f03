// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/lens_doubt.h"

#include <array>
#include <cmath>
#include <cstddef>

#include <Eigen/Eigenvalues>

#include "optics/scale_uncertainty.h"

namespace ringrule {
namespace {

using Parameters = Eigen::Matrix<double, 9, 1>;

Lens lensMoved(Lens lens, const Parameters& by) {
    lens.focalXPx += by(0);
    lens.focalYPx += by(1);
    lens.centreXPx += by(2);
    lens.centreYPx += by(3);
    for (std::size_t i = 0; i < lens.distortion.size(); ++i) lens.distortion[i] += by(static_cast<Eigen::Index>(i) + 4);
    return lens;
}

// One lens for each independent error that the covariance holds, moved by its standard deviation.
std::vector<PhotoLens> oneSdAway(const Box& box, const FoundPlate& plate, int widthPx, int heightPx) {
    Eigen::Matrix<double, 9, 9> covariance;
    for (Eigen::Index i = 0; i < 9; ++i)
        for (Eigen::Index j = 0; j < 9; ++j)
            covariance(i, j) = (*box.lensCovariance)[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
    // Pixels beside coefficients: as correlations the entries are of one size.
    const Parameters sd = covariance.diagonal().cwiseMax(0.0).cwiseSqrt();
    const Parameters unit = sd.unaryExpr([](double each) { return each > 0.0 ? 1.0 / each : 0.0; });
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix<double, 9, 9>> axes(unit.asDiagonal() * covariance *
                                                                          unit.asDiagonal());
    std::vector<PhotoLens> lenses;
    for (Eigen::Index k = 0; k < 9; ++k) {
        if (axes.eigenvalues()(k) < 1e-9) continue;
        const Parameters by = sd.asDiagonal() * axes.eigenvectors().col(k) * std::sqrt(axes.eigenvalues()(k));
        const auto lens = PhotoLens::of(lensMoved(*box.lens, by), widthPx, heightPx, plate.exifOrientation);
        if (lens) lenses.push_back(*lens);
    }
    return lenses;
}

// Ends of lengths over the plate, in parts of its sides: long and short, across and down, middle and edge.
constexpr std::array<std::array<double, 4>, 6> kLengths{{{0.1, 0.5, 0.9, 0.5},
                                                         {0.25, 0.5, 0.75, 0.5},
                                                         {0.5, 0.2, 0.5, 0.8},
                                                         {0.42, 0.5, 0.58, 0.5},
                                                         {0.05, 0.25, 0.4, 0.3},
                                                         {0.6, 0.7, 0.95, 0.75}}};
using Ends = std::array<std::array<PixelPoint, 2>, kLengths.size()>;

std::array<double, kLengths.size()> logLengths(const CameraFit& fit, const Ends& ends, const Box& box) {
    const FlatLayers layers =
        layersBefore(fit.layersToPlate, box.animalPlane.distanceFromPlateMm, box.media.has_value());
    std::array<double, kLengths.size()> logs{};
    for (std::size_t i = 0; i < ends.size(); ++i)
        logs[i] = std::log(
            (fit.camera.planeFromPixel(ends[i][1], layers) - fit.camera.planeFromPixel(ends[i][0], layers)).norm());
    return logs;
}

}  // namespace

double lensDoubt(const CameraFit& fit, const Box& box, const FoundPlate& plate, int imageWidthPx, int imageHeightPx) {
    const auto pixel = [&](double x, double y) {
        return fit.camera.pixelFromPlane({x * box.plate.widthMm, y * box.plate.heightMm}, fit.layersToPlate);
    };
    Ends ends;
    for (std::size_t i = 0; i < ends.size(); ++i) {
        const auto& [ax, ay, bx, by] = kLengths[i];
        ends[i] = {pixel(ax, ay), pixel(bx, by)};
    }
    const auto here = logLengths(fit, ends, box);
    double squares = 0.0;
    const auto lenses = oneSdAway(box, plate, imageWidthPx, imageHeightPx);
    for (const CameraFit& other : fitsWithLenses(fit, lenses, box.media, box.plate, plate.markers)) {
        const auto there = logLengths(other, ends, box);
        for (std::size_t i = 0; i < ends.size(); ++i) squares += std::pow(there[i] - here[i], 2);
    }
    return std::sqrt(squares / static_cast<double>(ends.size()));
}

}  // namespace ringrule
