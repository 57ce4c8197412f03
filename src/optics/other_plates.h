// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "optics/marker_detection.h"
#include "optics/plate_markers.h"

namespace ringrule {

/// Whether the markers that are not `placed` make up a second plate: three that agree on another place, or two that the
/// first has as well.
[[nodiscard]] bool secondPlateIn(const std::vector<FoundMarker>& all, const ConsistentMarkers& placed,
                                 const PlateLayout& plate, const std::optional<PhotoLens>& lens);

/// The name of a dictionary, neither the plate's nor the cards', of which three squares or more bear markers: the
/// smallest that has them all. Nothing when there is none.
[[nodiscard]] std::optional<std::string> otherMarkersIn(const std::vector<Square>& squares, const ReducedImage& image,
                                                        const Box& box);

}  // namespace ringrule
