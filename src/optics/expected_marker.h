// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>

#include <opencv2/core.hpp>

#include "optics/dictionary.h"
#include "ringrule/optics/lens.h"
#include "ringrule/optics/plate.h"

namespace ringrule {

/// A marker looked for where the plate's other markers say that it is, its corners refined; for markers that a search
/// by squares misses because glare, a drop or a shadow breaks their outline. Nothing unless most of its cells are as
/// printed under light that may slope across it, no other marker of the dictionary fits its bits as well, and its four
/// edges lie where they are expected. `expected` has the corners to a few pixels.
[[nodiscard]] std::optional<FoundMarker> markerAsExpected(const cv::Mat& grey, const FoundMarker& expected,
                                                          const MarkerDictionary& dictionary,
                                                          const std::optional<PhotoLens>& lens);

}  // namespace ringrule
