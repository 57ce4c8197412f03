// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

namespace ringrule {

/// The deepest notches that a closed outline has, each as the part of the outline round it; the straight way between
/// its ends closes it. At least as deep as half a disc, and no wider than the eyes of a body of that half-width may be;
/// none overlaps another, the deepest come first.
[[nodiscard]] std::vector<std::vector<cv::Point>> notchesOf(const std::vector<cv::Point>& outline, double halfWidthPx);

}  // namespace ringrule
