// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// The stored pixels turned as EXIF's orientation (1–8, tag 0x0112) asks. Orientation 1 shares the pixels.
[[nodiscard]] cv::Mat turnedUpright(const cv::Mat& stored, int exifOrientation);

}  // namespace ringrule
