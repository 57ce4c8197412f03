// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/photo_checks.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

constexpr double kSmallLengthPx = 400.0;
constexpr double kSmallDepthPx = 40.0;
constexpr double kBlurredShare = 0.10;     ///< sigma of the edge against the greatest depth

double greatestWidthPx(const Midline& midline) {
    double greatest = 0.0;
    for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
        greatest = std::max(greatest, midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i]);
    }
    return greatest;
}

constexpr double kBeyondEnd = 4.0;        ///< half-widths near the snout's end of the midline: the body goes on no farther …
constexpr double kBeyondEndMorePx = 8.0;  ///< … and some pixels

/// The body's half-width at a station, not more than its neighbours tell: where something crosses, one chord runs far
/// out.
double halfWidthAround(const Midline& midline, std::size_t i) {
    constexpr std::size_t kAside = 12;
    const auto half = [&midline](std::size_t k) {
        return std::max(midline.leftHalfWidthPx[k], midline.rightHalfWidthPx[k]);
    };
    const double before = half(i < kAside ? 0 : i - kAside);
    const double after = half(std::min(i + kAside, midline.spinePx.size() - 1));
    return std::min(half(i), 1.3 * std::max(before, after) + 2.0);
}

/// How far the body may go on beyond an end of the midline.
double reachOfEnd(const Midline& midline, std::size_t end) {
    const std::size_t inward = std::min<std::size_t>(12, midline.spinePx.size() - 1);
    const std::size_t i = end < 3 ? inward : midline.spinePx.size() - 1 - inward;
    return kBeyondEnd * std::max(midline.leftHalfWidthPx[i], midline.rightHalfWidthPx[i]) + kBeyondEndMorePx;
}

/// Whether a place lies farther from both the midline's end and the snout's tip than `reachPx`, on the snout's side.
bool liesBeyond(PixelPoint at, PixelPoint end, PixelPoint snout, double reachPx) {
    return distance(end, snout) < distance(at, end) && distance(at, snout) < distance(at, end) + reachPx &&
           std::min(distance(at, end), distance(at, snout)) > reachPx;
}

bool onPouch(const Anatomy& anatomy, PixelPoint at) {
    constexpr double kNearPx = 8.0;
    return std::any_of(anatomy.pouchPx.begin(), anatomy.pouchPx.end(),
                       [&](PixelPoint rim) { return distance(rim, at) < kNearPx; });
}

}  // namespace

void addRemark(std::vector<Remark>& remarks, Remark remark) {
    if (std::find(remarks.begin(), remarks.end(), remark) == remarks.end()) remarks.push_back(remark);
}

Sweep sweepOf(const Outline& outline, const Anatomy& anatomy) {
    const Midline& midline = anatomy.midline;
    constexpr std::size_t kStride = 3;
    Sweep sweep;
    std::optional<PixelPoint> snout;
    if (anatomy.shape != Shape::Seahorse && anatomy.landmarks.snoutTip) snout = anatomy.landmarks.snoutTip->atPx;
    double judged = 0.0;
    double missed = 0.0;
    for (std::size_t k = 0; k < outline.boundaryPx.size(); k += kStride) {
        const PixelPoint at = outline.boundaryPx[k];
        std::size_t nearest = 0;
        double least = 1e18;
        for (std::size_t i = 0; i < midline.spinePx.size(); ++i) {
            const PixelPoint off = midline.spinePx[i] - at;
            if (const double d = dot(off, off); d < least) least = d, nearest = i;
        }
        const bool tip = nearest < 3 || nearest + 3 >= midline.spinePx.size();
        const double half = halfWidthAround(midline, nearest);
        // At the other end a caudal fin may go on, and the head of a seahorse stands off its midline.
        if (tip && snout && liesBeyond(at, midline.spinePx[nearest], *snout, reachOfEnd(midline, nearest)))
            sweep.endsEarly = true;
        if (tip || half <= 0.0) continue;
        judged += 1.0;
        if (std::sqrt(least) > 1.3 * half + 2.0 && !onPouch(anatomy, at)) missed += 1.0;
    }
    sweep.unsweptShare = judged > 0.0 ? missed / judged : 0.0;
    return sweep;
}

std::vector<Remark> photoChecks(const Outline& outline, const Anatomy& anatomy) {
    std::vector<Remark> remarks;
    const double depthPx = greatestWidthPx(anatomy.midline);
    if (anatomy.midline.lengthPx() < kSmallLengthPx || depthPx < kSmallDepthPx) remarks.push_back(Remark::SmallInFrame);
    if (outline.edgeBlurPx > kBlurredShare * depthPx) remarks.push_back(Remark::Blurred);
    return remarks;
}

}  // namespace ringrule
