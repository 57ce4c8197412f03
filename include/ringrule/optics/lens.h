// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include <Eigen/Core>

#include "ringrule/geometry/point.h"
#include "ringrule/optics/box_file.h"

namespace ringrule {

// A ray is told by its slopes (x/z, y/z) against the optical axis: x right, y down, z into the scene.

/// The slopes at which an ideal pinhole would have recorded what this lens records for `ideal`: OpenCV's radial and
/// tangential model with k1 k2 p1 p2 k3 (Brown 1971).
[[nodiscard]] Eigen::Vector2d distorted(const Lens& lens, const Eigen::Vector2d& ideal);

/// d(distorted) / d(ideal).
[[nodiscard]] Eigen::Matrix2d distortionJacobian(const Lens& lens, const Eigen::Vector2d& ideal);

/// The inverse of `distorted` by Newton's method, to 1e-12. Precondition: the recorded slopes lie in the lens's own
/// image and `coversImage(lens)`.
[[nodiscard]] Eigen::Vector2d undistorted(const Lens& lens, const Eigen::Vector2d& recorded);

/// Whether the distortion grows outward all the way to the corners of the lens's image; a model that turns back before
/// is no camera's and has no inverse.
[[nodiscard]] bool coversImage(const Lens& lens);

/// A lens as it applies to the pixels of one upright photo: scaled to the photo's size and turned with it.
class PhotoLens {
public:
    /// The lens for a photo of that upright size and EXIF orientation (1–8). `Lens` describes pixels as the sensor
    /// stored them; only when its proportions fit the upright photo alone is it read as a lens of upright photos.
    /// Nothing when the proportions differ in both, to one pixel: such a photo was cropped or taken in another mode.
    [[nodiscard]] static std::optional<PhotoLens> of(const Lens& lens, int widthPx, int heightPx,
                                                     int exifOrientation = 1);

    /// Slopes of the ray seen in a pixel, in a camera frame that is upright as the photo is.
    [[nodiscard]] Eigen::Vector2d rayFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PixelPoint pixelFromRay(const Eigen::Vector2d& ray) const;

    /// A ray with its d(slopes) / d(pixel).
    struct RayWithJacobian {
        Eigen::Vector2d ray;
        Eigen::Matrix2d jacobian;
    };
    [[nodiscard]] RayWithJacobian rayWithJacobian(PixelPoint pixel) const;

    /// Whether the photo's size differs from that of the lens photos.
    [[nodiscard]] bool scaled() const { return scaled_; }
    [[nodiscard]] double focalPx() const;

private:
    PhotoLens() = default;

    Lens lens_;                    // scaled to the stored photo
    Eigen::Matrix2d turn_;         // stored axes from upright axes: entries 0, 1, −1
    Eigen::Matrix2d slopeFromPx_;  // recorded slopes = slopeFromPx_ · pixel + slopeAtOrigin_
    Eigen::Vector2d slopeAtOrigin_;
    Eigen::Matrix2d pxFromSlope_;
    bool scaled_ = false;
};

}  // namespace ringrule
