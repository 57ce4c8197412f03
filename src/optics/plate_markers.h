// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "ringrule/optics/box_file.h"
#include "ringrule/optics/lens.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// Corners of a marker on the plate, in OpenCV's order.
[[nodiscard]] std::array<PlatePoint, 4> markerCornersMm(const PlateMarker& marker);

/// The plate's marker with that id, or null.
[[nodiscard]] const PlateMarker* markerOfPlate(const PlateLayout& plate, int id);

/// Markers that lie as the plate says they do.
struct ConsistentMarkers {
    std::vector<FoundMarker> markers;
    Eigen::Matrix3d imageFromPlate =
        Eigen::Matrix3d::Identity();  ///< to pixels, or to a lens's rays where one is given
    double rmsPx = 0.0;
};

/// The largest set of markers that one homography puts where the plate says, each within a quarter of its side. Every
/// pair of markers is tried as the one that fixes it.
[[nodiscard]] ConsistentMarkers consistentMarkers(const std::vector<FoundMarker>& found, const PlateLayout& plate,
                                                  const std::optional<PhotoLens>& lens);

/// Where a point of the plate, or one of its markers, appears in the photo by the markers that were placed.
[[nodiscard]] PixelPoint pixelOnPlate(const ConsistentMarkers& placed, PlatePoint atMm,
                                      const std::optional<PhotoLens>& lens);
[[nodiscard]] FoundMarker markerOnPlate(const ConsistentMarkers& placed, const PlateMarker& printed,
                                        const std::optional<PhotoLens>& lens);

/// Whether the markers fix a scale: three of them, or two at least half the plate's diagonal apart.
[[nodiscard]] bool enoughMarkers(const std::vector<FoundMarker>& markers, const PlateLayout& plate);

}  // namespace ringrule
