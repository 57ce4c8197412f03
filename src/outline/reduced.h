// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

#include "outline/tone.h"
#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"

namespace ringrule {

/// Part of a photo in linear light, reduced by a whole factor (each value is the mean of factor × factor pixels).
struct Reduced {
    cv::Mat1f light;
    cv::Point originPx;  ///< photo pixel at the part's top-left
    int factor = 1;

    [[nodiscard]] PixelPoint photoFromReduced(double x, double y) const {
        return {originPx.x + (x + 0.5) * factor - 0.5, originPx.y + (y + 0.5) * factor - 0.5};
    }
    [[nodiscard]] cv::Point2d reducedFromPhoto(PixelPoint at) const {
        return {(at.x - originPx.x + 0.5) / factor - 0.5, (at.y - originPx.y + 0.5) / factor - 0.5};
    }
};

/// The part of `grey` under `partPx`, which is cut to whole blocks.
[[nodiscard]] Reduced reducedLight(const cv::Mat& grey, const Tone& tone, cv::Rect partPx, int factor);

/// The same of a photo's grey, by way of its halved picture where the factor is even.
[[nodiscard]] Reduced reducedLight(const Photo& photo, const Tone& tone, cv::Rect partPx, int factor);

}  // namespace ringrule
