// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include <opencv2/core.hpp>

#include "outline/tone.h"
#include "ringrule/geometry/point.h"

namespace ringrule {

struct EdgePathOptions {
    double stepPx = 1.5;          ///< between the points
    double reachPx = 5.0;         ///< how far from the path the edge may lie
    double leastContrast = 0.03;  ///< of light: what is fainter is no edge
};

/// An open path set on the edge along which it runs: at each point the place half-way in light between its two sides,
/// strays replaced by their neighbours. Points where no edge is seen stay where they were.
[[nodiscard]] std::vector<PixelPoint> onEdge(const cv::Mat& grey, const Tone& tone, std::span<const PixelPoint> path,
                                             const EdgePathOptions& options = {});

/// Light on both sides of a path: medians of what lies a few pixels to the right hand and to the left of the walk.
struct SidesOfPath {
    double right = 0.0;
    double left = 0.0;
};
[[nodiscard]] SidesOfPath sidesOf(const cv::Mat& grey, const Tone& tone, std::span<const PixelPoint> path,
                                  double offPx);

}  // namespace ringrule
