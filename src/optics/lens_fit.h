// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "ringrule/optics/lens_calibration.h"

namespace ringrule {

/// Which coefficients of the distortion are fitted beside k1 and k2; others stay 0.
struct LensModel {
    bool thirdRadial = true;
    bool tangential = true;
};

/// Where a board was before the camera, in the camera's frame.
struct BoardPose {
    Eigen::Matrix3d cameraFromBoard = Eigen::Matrix3d::Identity();
    Eigen::Vector3d middle = Eigen::Vector3d::Zero();  ///< of the board's points, mm

    /// Angle between the board's normal and the optical axis.
    [[nodiscard]] double tiltRadians() const;
    /// Angle of the turn that takes one board to the other.
    [[nodiscard]] double turnTo(const BoardPose& other) const;
};

struct LensFit {
    LensModel model;
    Lens lens;
    double rmsPx = 0.0;
    LensCovariance covariance{};
    std::vector<double> viewRmsPx;  ///< in the order of the views
    std::vector<BoardPose> poses;
    std::vector<std::vector<PixelPoint>> missesPx;  ///< seen less fitted, of each corner of each view

    /// Standard deviation of a parameter, in the order of the covariance.
    [[nodiscard]] double sd(std::size_t parameter) const { return std::sqrt(covariance[parameter][parameter]); }
    [[nodiscard]] double focalSdPx() const { return std::max(sd(0), sd(1)); }
};

/// Lens and poses that bring the printed points closest to where they were seen, all views of one size. Nothing when
/// the views do not determine them. Precondition: at least one view, each with at least four points.
[[nodiscard]] std::optional<LensFit> fitLens(const std::vector<const BoardView*>& views, const LensModel& model);

}  // namespace ringrule
