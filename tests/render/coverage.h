// SPDX-License-Identifier: GPL-3.0-or-later
// Exact share of each pixel that a polygon covers.
#pragma once

#include <opencv2/core.hpp>
#include <vector>

namespace render {

struct Coverage {
    cv::Rect bounds;  // in the pixels of the photo; may reach outside it
    cv::Mat1f share;  // 0 … 1, one value for each pixel of the bounds
};

// Coverage of a closed polygon given in pixels (pixel i spans i − 0.5 … i + 0.5). Signed
// areas of the edges are summed cell by cell, so nothing is sampled and no width is biased.
// Places that the outline winds round more than once count as covered once.
Coverage coverageOf(const std::vector<cv::Point2d>& polygon);

// Union of two coverages as if their edges were independent.
Coverage united(const Coverage& first, const Coverage& second);

}  // namespace render
