// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include <Eigen/Core>

#include "optics/refracted_camera.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/water.h"

namespace ringrule {

/// A camera's place before the plate as fitted to the markers' corners.
struct CameraFit {
    /// Small turns about the plate's axes after `plateFromCamera`, foot x and y, length of the way in air.
    static constexpr int kParameters = 6;
    using Covariance = Eigen::Matrix<double, kParameters, kParameters>;

    RefractedCamera camera;
    FlatLayers layersToPlate;
    Covariance covariance = Covariance::Zero();
    double rmsPx = 0.0;

    /// The same camera moved by a small change of its parameters.
    [[nodiscard]] CameraFit moved(const Eigen::Matrix<double, kParameters, 1>& by) const;
};

/// The pose that puts the marker corners where the plate says they are, by Levenberg–Marquardt over rays refracted
/// exactly. `media` gives the layers and the distance from camera to window as a prior of `kDistancePriorSd`; without
/// it all is taken as air at a distance of its own. Nothing when the corners determine no pose before the plate.
[[nodiscard]] std::optional<CameraFit> fitCamera(const PhotoLens& lens, const std::optional<Media>& media,
                                                 const PlateLayout& plate, const std::vector<FoundMarker>& markers);

/// The fit as it would be with each of other lenses that differ little from its own: one step of least squares from it.
[[nodiscard]] std::vector<CameraFit> fitsWithLenses(const CameraFit& fit, const std::vector<PhotoLens>& lenses,
                                                    const std::optional<Media>& media, const PlateLayout& plate,
                                                    const std::vector<FoundMarker>& markers);

/// Relative: a keeper's rule from the lens barrel to the window misses the entrance pupil by about a centimetre.
inline constexpr double kDistancePriorSd = 0.02;

}  // namespace ringrule
