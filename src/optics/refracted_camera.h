// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>

#include "ringrule/geometry/point.h"
#include "ringrule/optics/lens.h"
#include "ringrule/optics/water.h"

namespace ringrule {

/// A pinhole camera with a lens, looking through flat layers at planes parallel to the plate. z runs from the camera
/// into the plate; x and y are the plate's.
struct RefractedCamera {
    PhotoLens lens;
    Eigen::Matrix3d plateFromCamera;  ///< rotation: columns are the camera's axes in the plate's frame
    Eigen::Vector2d footMm;           ///< where the plate's normal through the entrance pupil meets the plate

    /// Where the ray of a pixel meets the plane behind `layers`: exact, by Snell's law in closed form.
    [[nodiscard]] Eigen::Vector2d planeFromPixel(PixelPoint pixel, const FlatLayers& layers) const;

    /// The pixel in which a point of that plane appears.
    [[nodiscard]] PixelPoint pixelFromPlane(const Eigen::Vector2d& pointMm, const FlatLayers& layers) const;

    /// d(planeFromPixel) / d(pixel).
    [[nodiscard]] Eigen::Matrix2d planeFromPixelJacobian(PixelPoint pixel, const FlatLayers& layers) const;

    /// Angle between the optical axis and the plate's normal.
    [[nodiscard]] double tiltRadians() const;
};

/// Where a ray with these slopes in the camera's frame meets the plane behind `layers`.
[[nodiscard]] Eigen::Vector2d planeFromRay(const Eigen::Vector2d& ray, const Eigen::Matrix3d& plateFromCamera,
                                           const Eigen::Vector2d& footMm, const FlatLayers& layers);

}  // namespace ringrule
