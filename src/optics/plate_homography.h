// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "optics/radial_bend.h"
#include "ringrule/geometry/plane_map.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// A scale from the plate alone, for a camera of unknown lens taken to stand square to the plate: a homography of the
/// photo once the radial bend that the marker corners themselves show is taken out.
struct PlateHomography {
    RadialBend bend;
    PlaneMap<PixelFrame, PlateFrame> plateFromStraight;
    PlaneMap<PlateFrame, PixelFrame> straightFromPlate;
    PlatePoint footMm;             ///< plate point in the middle of the photo, taken to lie opposite the camera
    double animalFromPlate = 1.0;  ///< lengths on the animal's plane over lengths on the plate behind it
    double rmsPx = 0.0;
    double relativeSd = 0.0;  ///< of its scale, from the scatter of the corners
    Eigen::Matrix2d bendCovariance = Eigen::Matrix2d::Zero();  ///< of the bend's coefficients

    [[nodiscard]] PlatePoint plateFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PixelPoint pixelFromPlate(PlatePoint point) const;
    /// d(x_mm, y_mm) / d(x_px, y_px) on the plate.
    [[nodiscard]] Eigen::Matrix2d plateFromPixelJacobian(PixelPoint pixel) const;
    [[nodiscard]] AnimalPoint animalFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PixelPoint pixelFromAnimal(AnimalPoint point) const;
};

/// The plate's homography and bend fitted to all marker corners, without any correction for depth. Nothing when they do
/// not determine it. Coefficients given are kept as they are.
[[nodiscard]] std::optional<PlateHomography> fitPlateHomography(const PlateLayout& plate,
                                                                const std::vector<FoundMarker>& markers,
                                                                int imageWidthPx, int imageHeightPx,
                                                                const std::optional<Eigen::Vector2d>& bend = std::nullopt);

}  // namespace ringrule
