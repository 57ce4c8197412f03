// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/camera_fit.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <Eigen/SVD>

#include "optics/plate_markers.h"
#include "ringrule/geometry/plane_map.h"

namespace ringrule {
namespace {

using Step = Eigen::Matrix<double, CameraFit::kParameters, 1>;

// Corner noise that weighs the markers against the prior, before the residuals tell it.
constexpr double kCornerSdPx = 0.1;
// Residuals of few corners can be small by chance: less than this is not believed.
constexpr double kLeastCornerSdPx = 0.03;

// Corners as rays seen and points printed; the rays do not depend on the pose.
struct Corners {
    std::vector<Eigen::Vector2d> rays;
    std::vector<Eigen::Vector2d> platesMm;
};

Corners cornersOf(const PhotoLens& lens, const PlateLayout& plate, const std::vector<FoundMarker>& markers) {
    Corners corners;
    for (const FoundMarker& marker : markers) {
        const PlateMarker* printed = markerOfPlate(plate, marker.id);
        if (printed == nullptr) continue;
        const auto cornersMm = markerCornersMm(*printed);
        for (std::size_t k = 0; k < 4; ++k) {
            corners.rays.push_back(lens.rayFromPixel(marker.cornersPx[k]));
            corners.platesMm.emplace_back(cornersMm[k].x, cornersMm[k].y);
        }
    }
    return corners;
}

// The pose of an ordinary pinhole from the homography of plate to rays (Zhang 2000, section 3.1), its distance then
// read as the reduced distance of the layers.
std::optional<CameraFit> firstGuess(const PhotoLens& lens, const FlatLayers& layers, const Corners& corners) {
    const auto map = fitHomography(corners.platesMm, corners.rays);
    if (!map) return std::nullopt;
    Eigen::Matrix3d columns = *map / (0.5 * (map->col(0).norm() + map->col(1).norm()));
    if (columns(2, 2) < 0.0) columns = -columns;  // the plate is before the camera
    const Eigen::Vector3d origin = columns.col(2);
    columns.col(2) = columns.col(0).cross(columns.col(1));
    const Eigen::JacobiSVD<Eigen::Matrix3d> svd(columns, Eigen::ComputeFullU | Eigen::ComputeFullV);
    const Eigen::Matrix3d cameraFromPlate = svd.matrixU() * svd.matrixV().transpose();
    if (cameraFromPlate.determinant() < 0.0) return std::nullopt;
    const Eigen::Vector3d camera = -(cameraFromPlate.transpose() * origin);
    CameraFit fit{{lens, cameraFromPlate.transpose(), camera.head<2>()}, layers};
    fit.layersToPlate.airMm = 0.0;
    fit.layersToPlate.airMm = -camera.z() - fit.layersToPlate.reducedDepthMm(0.0);
    if (fit.layersToPlate.airMm < 1.0) fit.layersToPlate.airMm = std::max(1.0, layers.airMm);
    return fit;
}

// Misses on the plate in units of the corner noise, and last the miss of the prior in units of its own.
Eigen::VectorXd residuals(const CameraFit& fit, const Corners& corners, double pxPerMm, double priorMm) {
    const auto count = static_cast<Eigen::Index>(corners.rays.size());
    Eigen::VectorXd r(2 * count + 1);
    for (Eigen::Index i = 0; i < count; ++i) {
        const auto k = static_cast<std::size_t>(i);
        r.segment<2>(2 * i) =
            (planeFromRay(corners.rays[k], fit.camera.plateFromCamera, fit.camera.footMm, fit.layersToPlate) -
             corners.platesMm[k]) *
            (pxPerMm / kCornerSdPx);
    }
    r(2 * count) = priorMm > 0.0 ? (fit.layersToPlate.airMm - priorMm) / (kDistancePriorSd * priorMm) : 0.0;
    return r;
}

Eigen::MatrixXd jacobian(const CameraFit& fit, const Corners& corners, double pxPerMm, double priorMm) {
    Eigen::MatrixXd result(2 * static_cast<Eigen::Index>(corners.rays.size()) + 1, CameraFit::kParameters);
    for (int j = 0; j < CameraFit::kParameters; ++j) {
        // Turns in radians against lengths of hundreds of mm; central differences are exact to about 1e-9 at these
        // steps.
        const double step = j < 3 ? 1e-5 : 1e-2;
        Step by = Step::Zero();
        by(j) = step;
        result.col(j) = (residuals(fit.moved(by), corners, pxPerMm, priorMm) -
                         residuals(fit.moved(-by), corners, pxPerMm, priorMm)) /
                        (2.0 * step);
    }
    return result;
}

// Levenberg–Marquardt with Marquardt's scaling of the diagonal.
CameraFit improved(CameraFit fit, const Corners& corners, double pxPerMm, double priorMm) {
    double damping = 1e-4;
    Eigen::VectorXd r = residuals(fit, corners, pxPerMm, priorMm);
    for (int round = 0; round < 50 && damping < 1e10; ++round) {
        const Eigen::MatrixXd j = jacobian(fit, corners, pxPerMm, priorMm);
        const CameraFit::Covariance normal = j.transpose() * j;
        CameraFit::Covariance damped = normal;
        damped.diagonal() *= 1.0 + damping;
        const Step by = -damped.ldlt().solve(j.transpose() * r);
        const CameraFit tried = fit.moved(by);
        const Eigen::VectorXd there = residuals(tried, corners, pxPerMm, priorMm);
        if (tried.layersToPlate.airMm > 0.0 && there.allFinite() && there.squaredNorm() < r.squaredNorm()) {
            const double gain = 1.0 - there.squaredNorm() / r.squaredNorm();
            fit = tried;
            r = there;
            damping = std::max(1e-12, 0.1 * damping);
            if (gain < 1e-12) break;
        } else {
            if (by.dot(normal * by) < 1e-18) break;
            damping *= 10.0;
        }
    }
    return fit;
}

// Mean scale of the photo on the plate: how many pixels a millimetre takes.
double pxPerMmOf(const CameraFit& fit, const Corners& corners) {
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (const auto& ray : corners.rays) mean += ray / static_cast<double>(corners.rays.size());
    const PixelPoint middle = fit.camera.lens.pixelFromRay(mean);
    return 1.0 / std::sqrt(std::abs(fit.camera.planeFromPixelJacobian(middle, fit.layersToPlate).determinant()));
}

}  // namespace

CameraFit CameraFit::moved(const Eigen::Matrix<double, kParameters, 1>& by) const {
    CameraFit result = *this;
    const Eigen::Vector3d turn = by.head<3>();
    const double angle = turn.norm();
    if (angle > 0.0)
        result.camera.plateFromCamera =
            Eigen::AngleAxisd(angle, turn / angle).toRotationMatrix() * camera.plateFromCamera;
    result.camera.footMm += by.segment<2>(3);
    result.layersToPlate.airMm += by(5);
    return result;
}

std::optional<CameraFit> fitCamera(const PhotoLens& lens, const std::optional<Media>& media, const PlateLayout& plate,
                                   const std::vector<FoundMarker>& markers) {
    const Corners corners = cornersOf(lens, plate, markers);
    if (corners.rays.size() < 8) return std::nullopt;
    const FlatLayers layers = media ? layersOf(*media, 0.0) : FlatLayers{};
    const double priorMm = media ? media->cameraToWindowMm : 0.0;
    auto guess = firstGuess(lens, layers, corners);
    if (!guess) return std::nullopt;
    const double pxPerMm = pxPerMmOf(*guess, corners);
    CameraFit fit = improved(std::move(*guess), corners, pxPerMm, priorMm);

    const Eigen::VectorXd r = residuals(fit, corners, pxPerMm, priorMm);
    const Eigen::Index marks = r.size() - 1;
    const double squares = r.head(marks).squaredNorm();
    fit.rmsPx = kCornerSdPx * std::sqrt(2.0 * squares / static_cast<double>(marks));
    const double cornerSdPx = std::max(
        kLeastCornerSdPx, kCornerSdPx * std::sqrt(squares / static_cast<double>(marks - CameraFit::kParameters)));
    Eigen::MatrixXd j = jacobian(fit, corners, pxPerMm, priorMm);
    j.topRows(marks) *= kCornerSdPx / cornerSdPx;
    const Eigen::LDLT<CameraFit::Covariance> information(j.transpose() * j);
    if (information.info() != Eigen::Success || information.rcond() < 1e-16) return std::nullopt;
    fit.covariance = information.solve(CameraFit::Covariance::Identity());
    if (!fit.covariance.allFinite()) return std::nullopt;
    return fit;
}

std::vector<CameraFit> fitsWithLenses(const CameraFit& fit, const std::vector<PhotoLens>& lenses,
                                      const std::optional<Media>& media, const PlateLayout& plate,
                                      const std::vector<FoundMarker>& markers) {
    const Corners corners = cornersOf(fit.camera.lens, plate, markers);
    const double priorMm = media ? media->cameraToWindowMm : 0.0;
    const double pxPerMm = pxPerMmOf(fit, corners);
    const Eigen::VectorXd here = residuals(fit, corners, pxPerMm, priorMm);
    const Eigen::MatrixXd j = jacobian(fit, corners, pxPerMm, priorMm);
    const Eigen::LDLT<CameraFit::Covariance> normal(j.transpose() * j);
    std::vector<CameraFit> fits;
    for (const PhotoLens& lens : lenses) {
        CameraFit other = fit;
        other.camera.lens = lens;
        const Eigen::VectorXd there = residuals(other, cornersOf(lens, plate, markers), pxPerMm, priorMm);
        fits.push_back(other.moved(-normal.solve(j.transpose() * (there - here))));
    }
    return fits;
}

}  // namespace ringrule
