// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include <opencv2/core.hpp>

#include "ringrule/optics/lens.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// The marker with its corners to a few hundredths of a pixel: where lines fitted to its four edges meet. Each edge is
/// met by profiles across it, and the edge's place on a profile is where the light is half-way between ink and paper.
/// With a lens the lines are fitted where they are straight, on the undistorted image. Nothing when an edge cannot be
/// seen over most of its length. `cellsAcross` counts the marker's cells along a side, border included.
[[nodiscard]] std::optional<FoundMarker> refinedCorners(const cv::Mat& grey, const FoundMarker& marker, int cellsAcross,
                                                        const std::optional<PhotoLens>& lens);

}  // namespace ringrule
