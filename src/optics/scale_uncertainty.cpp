// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/scale_uncertainty.h"
#include "ringrule/statistics/estimate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

#include <Eigen/Eigenvalues>

namespace ringrule {
namespace {

using Step = Eigen::Matrix<double, CameraFit::kParameters, 1>;

// A plate is checked against a steel rule, which can be read to about 0.1 mm over 200 mm.
constexpr double kPlatePrintSd = 0.0005;
// Sea water of 35 ppt at 20 °C, for boxes that do not say: from fresh to sea water the index changes by 0.5 %.
constexpr double kAssumedWaterIndex = 1.3394;
// What a plate that stands off the window by 1 degree, both ways (one standard deviation), does to lengths: measured
// over 400 simulated boxes, tests/optics/rod_interval_test.cpp. No box file tells the angle.
constexpr double kPlateOffWindowSd = 0.00014;
// Nearest reduced distance from which a plate is photographed.
constexpr double kNearestPlateMm = 250.0;

double rootOfSquares(std::initializer_list<double> parts) {
    double squares = 0.0;
    for (const double part : parts) squares += part * part;
    return std::sqrt(squares);
}

// Standard deviation of the animal's distance before the plane of the markers: where it hangs, and how the plate bows
// between them.
double heightSdMm(const Box& box) {
    return std::hypot(box.animalPlane.toleranceMm, box.plate.flatnessMm) / kSdsInHalf95;
}

// Ends of two lengths through the plate's middle, each half as long as the plate is that way.
std::array<PixelPoint, 4> probesOf(const CameraFit& fit, const PlateLayout& plate) {
    const auto at = [&](double x, double y) {
        return fit.camera.pixelFromPlane({x * plate.widthMm, y * plate.heightMm}, fit.layersToPlate);
    };
    return {at(0.25, 0.5), at(0.75, 0.5), at(0.5, 0.25), at(0.5, 0.75)};
}

// Mean logarithm of the two lengths on a plane `heightMm` before the plate.
double logLength(const CameraFit& fit, const std::array<PixelPoint, 4>& probes, double heightMm, bool mediaKnown) {
    const FlatLayers layers = layersBefore(fit.layersToPlate, heightMm, mediaKnown);
    const auto at = [&](std::size_t k) { return fit.camera.planeFromPixel(probes[k], layers); };
    return 0.5 * (std::log((at(1) - at(0)).norm()) + std::log((at(3) - at(2)).norm()));
}

double randomPart(const CameraFit& fit, const std::array<PixelPoint, 4>& probes, double heightMm, bool mediaKnown) {
    Step gradient;
    for (int j = 0; j < CameraFit::kParameters; ++j) {
        const double step = j < 3 ? 1e-5 : 1e-2;
        Step by = Step::Zero();
        by(j) = step;
        gradient(j) = (logLength(fit.moved(by), probes, heightMm, mediaKnown) -
                       logLength(fit.moved(-by), probes, heightMm, mediaKnown)) /
                      (2.0 * step);
    }
    return std::sqrt(std::max(0.0, gradient.dot(fit.covariance * gradient)));
}

// Relative error of lengths about the plate's middle, short and long, when what is seen of them is read by `by`: the
// largest of them.
template <class Seen>
double lengthError(const PlateHomography& by, const PlateLayout& layout, const Seen& seen) {
    double error = 0.0;
    for (const double half : {0.02, 0.25}) {
        for (const auto& [x, y] : {std::pair{half, 0.0}, std::pair{0.0, half}}) {
            const PlatePoint a{(0.5 - x) * layout.widthMm, (0.5 - y) * layout.heightMm};
            const PlatePoint b{(0.5 + x) * layout.widthMm, (0.5 + y) * layout.heightMm};
            const double length = distance(by.plateFromPixel(seen(a)), by.plateFromPixel(seen(b)));
            error = std::max(error, std::abs(length / distance(a, b) - 1.0));
        }
    }
    return error;
}

// What the bend's own error may do to lengths (standard deviation): the plate read once more with the bend one standard
// deviation off, each way that its coefficients may err on their own.
double bendPart(const PlateHomography& plane, const PlateLayout& layout, const FoundPlate& plate, int imageWidthPx,
                int imageHeightPx) {
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> axes(plane.bendCovariance);
    const Eigen::Vector2d bend(plane.bend.coefficients[0], plane.bend.coefficients[1]);
    double squares = 0.0;
    for (Eigen::Index k = 0; k < 2; ++k) {
        const Eigen::Vector2d off = axes.eigenvectors().col(k) * std::sqrt(std::max(0.0, axes.eigenvalues()(k)));
        const auto other = fitPlateHomography(layout, plate.markers, imageWidthPx, imageHeightPx, bend + off);
        if (!other) return kUsualBendSd;
        squares += std::pow(lengthError(*other, layout, [&](PlatePoint at) { return plane.pixelFromPlate(at); }), 2);
    }
    return std::sqrt(squares);
}

}  // namespace

FlatLayers layersBefore(FlatLayers toPlate, double heightMm, bool mediaKnown) {
    if (mediaKnown)
        toPlate.waterMm -= heightMm;
    else
        toPlate.airMm = std::max(1.0, toPlate.airMm - heightMm / kAssumedWaterIndex);
    return toPlate;
}

double depthBias(const Box& box) {
    const FlatLayers toPlate = layersOf(*box.media, 0.0);
    const FlatLayers toAnimal = layersOf(*box.media, box.animalPlane.distanceFromPlateMm);
    return toPlate.reducedDepthMm(0.0) / toAnimal.reducedDepthMm(0.0) - 1.0;
}

ScaleUncertainty scaleUncertainty(const CameraFit& fit, const Box& box) {
    const bool mediaKnown = box.media.has_value();
    const double height = box.animalPlane.distanceFromPlateMm;
    const auto probes = probesOf(fit, box.plate);
    const double perMm = 0.5 * std::abs(logLength(fit, probes, height + 1.0, mediaKnown) -
                                        logLength(fit, probes, height - 1.0, mediaKnown));
    const double depth = perMm * heightSdMm(box);
    // The correction for depth is as uncertain as the distance it is made with; without media there may be no water.
    const double doubt = mediaKnown ? std::abs(fit.layersToPlate.airMm / box.media->cameraToWindowMm - 1.0)
                                    : (kAssumedWaterIndex - 1.0) / std::sqrt(3.0);
    return {randomPart(fit, probes, height, mediaKnown),
            rootOfSquares({depth, perMm * height * doubt, kPlatePrintSd, kPlateOffWindowSd})};
}

ScaleUncertainty scaleUncertainty(const PlateHomography& plane, const Box& box, const FoundPlate& plate,
                                  int imageWidthPx, int imageHeightPx) {
    const double lens = bendPart(plane, box.plate, plate, imageWidthPx, imageHeightPx);
    const double heightSd = heightSdMm(box);
    if (box.media) {
        const FlatLayers toAnimal = layersOf(*box.media, box.animalPlane.distanceFromPlateMm);
        const double perMm = 1.0 / (toAnimal.waterIndex * toAnimal.reducedDepthMm(0.0));
        return {plane.relativeSd, rootOfSquares({lens, perMm * heightSd, kPlatePrintSd, kPlateOffWindowSd})};
    }
    // Nothing was corrected: the interval must reach as far as the largest correction could.
    const double uncorrected = box.animalPlane.distanceFromPlateMm / kNearestPlateMm / kSdsInHalf95;
    return {plane.relativeSd, rootOfSquares({lens, uncorrected, heightSd / kNearestPlateMm, kPlatePrintSd})};
}

}  // namespace ringrule
