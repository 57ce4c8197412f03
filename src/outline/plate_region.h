// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "outline/reduced.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"

namespace ringrule {

/// Masks over a reduced picture of the plate, 255 where true.
struct PlateRegion {
    cv::Mat1b plate;   ///< on the plate, a narrow rim left out
    cv::Mat1b marks;   ///< markers and card markers with their quiet zones, and the writing on cards
    cv::Mat1b rim;     ///< the outer part of the plate, where rulers and lettering are printed
    cv::Mat1b scales;  ///< the strips along the lower and the left edge that hold the plate's millimetre scales
    std::vector<std::vector<cv::Point2d>> cards;  ///< corners of card markers in the reduced picture
};

/// The photo's rectangle that holds the plate.
[[nodiscard]] cv::Rect plateBounds(const cv::Mat& grey, const Box& box, const Scale& scale);

/// Where the plate and its known print lie in a reduced picture.
[[nodiscard]] PlateRegion plateRegion(const Reduced& picture, const Box& box, const FoundPlate& plate,
                                      const Scale& scale);

}  // namespace ringrule
