// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/midline/midline.h"

#include <algorithm>
#include <cmath>

#include "midline/medial_axis.h"
#include "midline/spine.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr double kLeastAspect = 3.0;  ///< a body shorter than this many half-widths' doubles has no long axis

}  // namespace

double Midline::lengthPx() const { return lengthOf<PixelFrame>(spinePx); }

Outcome<Midline> findMidline(const Photo& /*photo*/, const Outline& outline) {
    const Refusal none{"no-midline", "What was found has no long axis: it is no animal seen from the side."};
    const MedialPath path = medialPath(outline);
    if (path.pathPx.size() < 12) return none;
    if (lengthOf<PixelFrame>(path.pathPx) + 2.0 * path.greatestHalfWidthPx < kLeastAspect * 2.0 * path.greatestHalfWidthPx) {
        return none;
    }
    Midline midline = spineThrough(outline, path);
    if (midline.spinePx.size() < 12) return none;
    return midline;
}

Midline reversed(const Midline& midline) {
    Midline back = midline;
    std::reverse(back.spinePx.begin(), back.spinePx.end());
    std::reverse(back.leftHalfWidthPx.begin(), back.leftHalfWidthPx.end());
    std::reverse(back.rightHalfWidthPx.begin(), back.rightHalfWidthPx.end());
    std::swap(back.leftHalfWidthPx, back.rightHalfWidthPx);
    return back;
}

}  // namespace ringrule
