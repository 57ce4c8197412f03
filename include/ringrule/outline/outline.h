// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/remark.h"

namespace ringrule {

/// One animal's outline in a photo: the body without its transparent fins.
struct Outline {
    std::vector<PixelPoint> boundaryPx;            ///< closed, not repeated at the end; clockwise as seen on the photo
    std::vector<std::vector<PixelPoint>> holesPx;  ///< background seen through a curl; counter-clockwise
    double areaPx2 = 0.0;                          ///< inside the boundary, holes taken out
    double edgeBlurPx = 0.0;                       ///< sigma of the edge's own softness, measured across it
    double edgeSdPx = 0.0;                         ///< standard deviation of the boundary's place along its normal
    std::vector<Remark> remarks;
};

}  // namespace ringrule
