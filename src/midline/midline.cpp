// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/midline/midline.h"

#include <algorithm>
#include <cmath>

#include "midline/fading_end.h"
#include "midline/medial_axis.h"
#include "midline/spine.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr double kLeastAspect = 3.0;   ///< a body under this many times as long as wide has no long axis
constexpr double kLongestArm = 2.5;    ///< greatest half-widths: what lies farther from the path is another body's
constexpr double kStoutShare = 0.55;   ///< of the greatest half-width: a part that thick is a trunk or a head …
constexpr double kDeepestWaist = 1.7;  ///< … and between two of one body it gets no thinner than this
constexpr double kFinShare = 0.07;     ///< of the path at either end: a caudal fin may widen there
constexpr double kHoleInHalfWidths =
    0.006;                            ///< a hole's area in squares of the greatest half-width: smaller ones are skin
constexpr double kBesideHole = 1.35;  ///< a station this many half-widths from a hole's rim runs along it

/// Whether the outline holds more than one body: an arm leads far away from the path, or two stout parts hang together
/// by a thin one. Of 2,000 single animals, drawn with tails open or curled, arms reached 2.0 greatest half-widths
/// (coronet) and waists 1.5 (a thin pipefish behind its head).
bool severalBodies(const MedialPath& path) {
    if (path.farthestAsidePx > kLongestArm * path.greatestHalfWidthPx) return true;
    std::vector<double> ahead(path.halfWidthPx.size());
    const auto end = static_cast<std::size_t>(kFinShare * static_cast<double>(ahead.size()));
    double most = 0.0;
    for (std::size_t i = ahead.size() - end; i-- > end;) ahead[i] = most = std::max(most, path.halfWidthPx[i]);
    most = 0.0;
    for (std::size_t i = end; i + end < ahead.size(); ++i) {
        most = std::max(most, path.halfWidthPx[i]);
        const double lesser = std::min(most, ahead[i]);
        if (lesser > kStoutShare * path.greatestHalfWidthPx && lesser > kDeepestWaist * path.halfWidthPx[i])
            return true;
    }
    return false;
}

/// The holes that a body makes by closing on itself.
std::vector<std::vector<PixelPoint>> coilHoles(const Outline& outline, double greatestHalfPx) {
    std::vector<std::vector<PixelPoint>> holes;
    const double least = std::max(12.0, kHoleInHalfWidths * greatestHalfPx * greatestHalfPx);
    for (const auto& hole : outline.holesPx) {
        if (std::abs(signedArea<PixelFrame>(hole)) > least) holes.push_back(hole);
    }
    return holes;
}

/// The first station that runs along a hole, walking from the front; the count of stations when none does.
std::size_t firstBesideHole(const Midline& midline, const std::vector<std::vector<PixelPoint>>& holes) {
    for (std::size_t i = 2; i + 2 < midline.spinePx.size(); ++i) {
        const double half = 0.5 * (midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i]);
        for (const auto& hole : holes) {
            for (const PixelPoint rim : hole) {
                if (distance(rim, midline.spinePx[i]) < kBesideHole * half + 1.0) return i;
            }
        }
    }
    return midline.spinePx.size();
}

/// The part of the midline that is clear of the coil, walked toward it.
Midline cutAtCoil(const Midline& midline, const std::vector<std::vector<PixelPoint>>& holes) {
    const Midline backward = reversed(midline);
    const std::size_t front = firstBesideHole(midline, holes);
    const std::size_t back = firstBesideHole(backward, holes);
    Midline clear = front >= back ? midline : backward;
    const std::size_t keep = std::max(front, back);
    clear.spinePx.resize(keep);
    clear.leftHalfWidthPx.resize(keep);
    clear.rightHalfWidthPx.resize(keep);
    clear.closedCoil = true;
    clear.remarks.push_back(Remark::TailClosed);
    return clear;
}

}  // namespace

double Midline::lengthPx() const {
    return lengthOf<PixelFrame>(spinePx);
}

Outcome<Midline> findMidline(const Photo& photo, const Outline& outline) {
    const Refusal none{"no-midline",
                       "What was found has no long axis: it is no animal seen from the side, or only the eye of one as "
                       "pale as the plate. Use a dark plate for such."};
    const MedialPath path = medialPath(outline);
    if (path.pathPx.size() < 12) return none;
    if (lengthOf<PixelFrame>(path.pathPx) < kLeastAspect * 2.0 * path.greatestHalfWidthPx) return none;
    const auto holes = coilHoles(outline, path.greatestHalfWidthPx);
    // Round a hole the path takes one side; the other is no second body.
    if (holes.empty() && severalBodies(path)) {
        return Refusal{"not-one-body",
                       "The outline is not one body: animals cross or touch, or something hangs on one. "
                       "Take them apart and repeat."};
    }
    Midline midline = spineThrough(outline, path);
    if (midline.spinePx.size() < 12) return none;
    if (!holes.empty()) {
        midline = cutAtCoil(midline, holes);
        if (midline.spinePx.size() < 12) {
            return Refusal{"tail-closed",
                           "The body closes on itself and hides its length. Wait until it opens by itself."};
        }
        return midline;
    }
    return withFadingEnds(photo, outline, std::move(midline));
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
