// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// A box that a person drew round an animal, upright in the photo.
struct DrawnBox {
    PixelPoint topLeftPx;
    PixelPoint bottomRightPx;
};

/// The outline of what fills a box that was drawn round an animal, for animals that do not stand clear of what is behind
/// them: its colours are told from those outside the box (GrabCut: Rother, Kolmogorov & Blake 2004, ACM Trans. Graph.
/// 23:309), then the boundary is set on the photo's own edge. It says `Remark::OutlinedByHand`: a person looks at it
/// before it counts. Takes about a second. Refuses with "cannot-separate" when nothing in the box differs from what
/// surrounds it. Precondition: the box has an area on the photo.
[[nodiscard]] Outcome<Outline> findOutlineIn(const Photo& photo, const DrawnBox& box);

}  // namespace ringrule
