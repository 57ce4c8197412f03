// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include <opencv2/core.hpp>

#include "optics/dictionary.h"
#include "optics/plate_markers.h"

namespace ringrule {

/// Markers with those mended of which an edge was read off a drop or a streak of glare instead of the print: a marker
/// that lies far off against the others is read again from where they put it. One that then still has no square's shape
/// is left out; one that is whole but elsewhere stays, for it may be printed or glued there. With fewer than four
/// markers all stay as they are.
[[nodiscard]] ConsistentMarkers withMendedCorners(const ConsistentMarkers& placed, const cv::Mat& grey,
                                                  const PlateLayout& plate, const MarkerDictionary& dictionary,
                                                  const std::optional<PhotoLens>& lens);

}  // namespace ringrule
