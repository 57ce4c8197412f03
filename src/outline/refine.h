// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "outline/tone.h"
#include "ringrule/geometry/point.h"

namespace ringrule {

/// A boundary set on the photo's own edge, with what was seen of that edge.
struct RefinedBoundary {
    std::vector<PixelPoint> pointsPx;
    double blurPx = 0.0;      ///< sigma of the edge
    double sdPx = 0.0;        ///< scatter of single edge places about their neighbours
    double foundShare = 0.0;  ///< of the points: where an edge was seen
    double inside = 0.0;      ///< median light inside …
    double outside = 0.0;     ///< … and outside
};

struct RefineOptions {
    double stepPx = 1.0;        ///< between boundary points
    double startBlurPx = 1.0;   ///< sigma to begin with
    double contourLagPx = 0.5;  ///< how far inside the edge the given contour runs
    double inside = 0.0;        ///< light of the body near its edge …
    double outside = 1.0;       ///< … and of the plate beside it
    bool shadedRim = false;     ///< the body is the lighter side of the edge and darkens toward its rim
};

/// The closed boundary moved along its normals onto the photo's edge at full resolution: at each point a blurred step
/// is fitted in linear light, and the blur itself is measured from all of them together. The body lies on the right
/// hand of the walk along the boundary as seen on the photo.
[[nodiscard]] RefinedBoundary refineBoundary(const cv::Mat& grey, const Tone& tone,
                                             const std::vector<PixelPoint>& contour, const RefineOptions& options);

}  // namespace ringrule
