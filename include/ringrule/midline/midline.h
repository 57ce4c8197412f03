// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"
#include "ringrule/remark.h"

namespace ringrule {

/// The body's midline from tip to tip, even steps of arc, with the two half-widths across it. "Left" is the side on the
/// left hand when walking from front to back on the photo.
struct Midline {
    std::vector<PixelPoint> spinePx;
    std::vector<double> leftHalfWidthPx;
    std::vector<double> rightHalfWidthPx;
    bool closedCoil = false;      ///< the body closes on itself: the spine ends where it can no longer be followed
    std::vector<Remark> remarks;

    [[nodiscard]] double lengthPx() const;
};

/// The midline of one outline, refined on the photo's own edges. Refuses with "no-midline" when the outline has no
/// long axis.
[[nodiscard]] Outcome<Midline> findMidline(const Photo& photo, const Outline& outline);

/// The same midline walked from the other end.
[[nodiscard]] Midline reversed(const Midline& midline);

}  // namespace ringrule
