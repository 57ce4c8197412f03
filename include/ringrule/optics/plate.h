// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// A square marker in a photo; corners in OpenCV's order (top-left, top-right, bottom-right, bottom-left of the print).
struct FoundMarker {
    int id = -1;
    std::array<PixelPoint, 4> cornersPx;
};

/// The scale plate and animal cards as found in a photo.
struct FoundPlate {
    std::vector<FoundMarker> markers;     ///< only markers that belong to the plate, each where the plate says it is
    std::vector<FoundMarker> cards;       ///< animal cards, left to right
    std::array<PixelPoint, 4> cornersPx;  ///< the plate's own corners, top-left first, clockwise on the print
    double cornerRmsPx = 0.0;             ///< residual of the marker corners about the plate's homography
    int expectedMarkers = 0;
    int exifOrientation = 1;   ///< of the photo: a box file's lens describes pixels as stored, not upright
    std::string cameraMake{};  ///< as the photo's EXIF names it; empty when it does not
    std::string cameraModel{};
    std::optional<double> focalLengthMm{};  ///< as EXIF tells it
};

/// The plate in the photo. Refuses with "no-plate", "too-few-markers", "plate-mirrored", "plate-mismatch",
/// "plate-other-markers" or "two-plates".
/// Throws `Error(BadBox)` when the box names no dictionary.
[[nodiscard]] Outcome<FoundPlate> findPlate(const Photo& photo, const Box& box);

}  // namespace ringrule
