// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "outline/plate_region.h"

namespace ringrule {

/// A dark piece before the plate that can be an animal.
struct Piece {
    int label = 0;    ///< in `Pieces::labels`
    cv::Rect bounds;  ///< in the reduced picture
    cv::Rect reach;   ///< the same with what hangs on it more faintly: thin ends
    double areaMm2 = 0.0;
    double halfWidthMm = 0.0;  ///< largest distance of an inner point from its border
    bool atEdge = false;       ///< reaches the plate's edge or print that hides it
};

struct Pieces {
    cv::Mat1i labels;
    std::vector<Piece> animals;  ///< left to right
    double contrast = 0.0;       ///< of the animals' edges, share of the plate's light
    double threshold = 0.0;      ///< share of the plate's light between animal and plate
};

/// The share of the plate's light at which contours are long and steep: a step blurred by the lens is steepest half-way
/// up, a soft shadow and the plate's own texture never are. Edges near print are left out. 0 when no edge stands out
/// from noise.
[[nodiscard]] double edgeThreshold(const cv::Mat1f& ratio, const PlateRegion& region, double noise);

/// Dark pieces below the threshold, print and debris left out. `ratio` is light over the background.
[[nodiscard]] Pieces findPieces(const cv::Mat1f& ratio, const PlateRegion& region, double threshold, double pxPerMm,
                                double smallestMm2);

}  // namespace ringrule
