// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "ringrule/geometry/plane_map.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// A scale from the plate's homography alone, for a camera of unknown lens taken to stand square to the plate.
struct PlateHomography {
    PlaneMap<PixelFrame, PlateFrame> plateFromPixel;
    PlaneMap<PlateFrame, PixelFrame> pixelFromPlate;
    PlatePoint footMm;             ///< plate point in the middle of the photo, taken to lie opposite the camera
    double animalFromPlate = 1.0;  ///< lengths on the animal's plane over lengths on the plate behind it
    double rmsPx = 0.0;
    double relativeSd = 0.0;  ///< of its scale, from the scatter of the corners

    [[nodiscard]] AnimalPoint animalFromPixel(PixelPoint pixel) const;
    [[nodiscard]] PixelPoint pixelFromAnimal(AnimalPoint point) const;
};

/// The plate's homography fitted to all marker corners, without any correction for depth. Nothing when they do not
/// determine it.
[[nodiscard]] std::optional<PlateHomography> fitPlateHomography(const PlateLayout& plate,
                                                                const std::vector<FoundMarker>& markers,
                                                                int imageWidthPx, int imageHeightPx);

}  // namespace ringrule
