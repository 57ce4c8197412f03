// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// How a region's code values are spread; fractions from 0 to 1 of its pixels, all 0 for no pixels.
struct Exposure {
    double clippedLight = 0.0;  ///< 254 or more: what was brighter cannot be told
    double clippedDark = 0.0;   ///< 1 or less
    double darkCode = 0.0;      ///< 5th percentile of the code values
    double middleCode = 0.0;    ///< median
    double lightCode = 0.0;     ///< 95th percentile
};

/// The exposure of grey pixels (CV_8UC1), of those where `mask` is not zero if one of the same size is given.
[[nodiscard]] Exposure exposureOf(const cv::Mat& grey, const cv::Mat& mask = {});

}  // namespace ringrule
