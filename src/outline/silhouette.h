// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "outline/picture.h"
#include "outline/pieces.h"
#include "outline/reduced.h"
#include "ringrule/geometry/point.h"

namespace ringrule {

/// One animal's silhouette to about a pixel, in pixels of the photo.
struct Silhouette {
    std::vector<PixelPoint> outerPx;               ///< closed
    std::vector<std::vector<PixelPoint>> holesPx;  ///< the plate seen through the body
    std::vector<std::vector<PixelPoint>> partsPx;  ///< further parts of it, apart at the local threshold
    double inside = 0.0;                           ///< light of the animal near its edge …
    double outside = 0.0;                          ///< … and of the plate beside it
    double stepPx = 1.0;                           ///< side of the picture's pixels that it was found on
    bool cut = false;                              ///< it runs out of the window in which it was looked for
    bool glare = false;                            ///< a reflection inside the body
    bool found = false;
};

/// The silhouette of `piece`, searched at `factor` around the place where it was found in `coarse`. The threshold lies
/// half-way between the light inside and the light outside, both taken nearby, so that a soft shadow moves the outside
/// level and not the edge (local two-level fitting after Li, Kao, Gore & Ding 2008, IEEE Trans. Image Process.
/// 17:1940).
[[nodiscard]] Silhouette findSilhouette(const Picture& picture, const Reduced& coarse, const PlateRegion& region,
                                        const Pieces& pieces, const Piece& piece, int factor,
                                        double pxPerMm);

}  // namespace ringrule
