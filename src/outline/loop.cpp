// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/loop.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"
#include "ringrule/outline/edit_outline.h"

namespace ringrule {
namespace {

/// Segments of a loop by their left end, so that only those that overlap in x are compared.
struct Span {
    double left = 0.0, right = 0.0, top = 0.0, bottom = 0.0;
    PixelPoint a, b;
    std::size_t loop = 0, index = 0, count = 0;
};

void addSpans(std::vector<Span>& spans, const Loop& loop, std::size_t which) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const PixelPoint a = loop[i];
        const PixelPoint b = loop[(i + 1) % loop.size()];
        spans.push_back({std::min(a.x, b.x), std::max(a.x, b.x), std::min(a.y, b.y), std::max(a.y, b.y), a, b, which, i,
                         loop.size()});
    }
}

bool neighbours(const Span& one, const Span& other) {
    if (one.loop != other.loop) return false;
    const std::size_t apart = one.index > other.index ? one.index - other.index : other.index - one.index;
    return apart <= 1 || apart + 1 == one.count;
}

/// Whether any two spans cross that are not neighbours on one loop; `apart`: only spans of different loops count.
bool anyCross(std::vector<Span> spans, bool apart) {
    std::sort(spans.begin(), spans.end(), [](const Span& one, const Span& other) { return one.left < other.left; });
    for (std::size_t i = 0; i < spans.size(); ++i) {
        for (std::size_t j = i + 1; j < spans.size() && spans[j].left <= spans[i].right; ++j) {
            if (spans[i].top > spans[j].bottom || spans[j].top > spans[i].bottom) continue;
            if (apart ? spans[i].loop == spans[j].loop : neighbours(spans[i], spans[j])) continue;
            if (crossingOf(spans[i].a, spans[i].b, spans[j].a, spans[j].b)) return true;
        }
    }
    return false;
}

}  // namespace

LoopPlace nearestPlace(const Loop& loop, PixelPoint to) {
    LoopPlace best;
    best.distancePx = 1e300;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const PixelPoint a = loop[i];
        const PixelPoint step = loop[(i + 1) % loop.size()] - a;
        const double squared = dot(step, step);
        const double share = squared > 0.0 ? std::clamp(dot(to - a, step) / squared, 0.0, 1.0) : 0.0;
        const PixelPoint at = a + step * share;
        if (const double d = distance(at, to); d < best.distancePx) best = {i, share, at, d};
    }
    return best;
}

std::vector<PixelPoint> between(const Loop& loop, const LoopPlace& from, const LoopPlace& to) {
    std::vector<PixelPoint> points;
    const bool round = from.segment == to.segment && to.share < from.share;
    std::size_t steps = (to.segment + loop.size() - from.segment) % loop.size();
    if (round) steps = loop.size();
    points.reserve(steps);
    for (std::size_t k = 1; k <= steps; ++k) points.push_back(loop[(from.segment + k) % loop.size()]);
    return points;
}

double meanStepPx(const Loop& loop) {
    return perimeter<PixelFrame>(loop) / static_cast<double>(std::max<std::size_t>(loop.size(), 1));
}

std::vector<PixelPoint> evenPath(std::span<const PixelPoint> path, double stepPx) {
    const double length = lengthOf<PixelFrame>(path);
    const auto steps = static_cast<std::size_t>(std::max(1L, std::lround(length / std::max(stepPx, 1e-6))));
    return resampled<PixelFrame>(path, steps + 1);
}

std::optional<SegmentCrossing> crossingOf(PixelPoint a, PixelPoint b, PixelPoint c, PixelPoint d) {
    const PixelPoint ab = b - a;
    const PixelPoint cd = d - c;
    const double turn = cross<PixelFrame>(ab, cd);
    if (turn == 0.0) return std::nullopt;
    const double shareAb = cross<PixelFrame>(c - a, cd) / turn;
    const double shareCd = cross<PixelFrame>(c - a, ab) / turn;
    // Half-open, so that a line through a corner crosses one of its two segments.
    if (shareAb < 0.0 || shareAb >= 1.0 || shareCd < 0.0 || shareCd >= 1.0) return std::nullopt;
    return SegmentCrossing{shareAb, shareCd};
}

bool crossesItself(const Loop& loop) {
    std::vector<Span> spans;
    addSpans(spans, loop, 0);
    return anyCross(std::move(spans), false);
}

bool loopsCross(const Loop& one, const Loop& other) {
    std::vector<Span> spans;
    addSpans(spans, one, 0);
    addSpans(spans, other, 1);
    return anyCross(std::move(spans), true);
}

Outline drawnByHand(Outline outline, double drawnPx) {
    if (signedArea<PixelFrame>(outline.boundaryPx) < 0.0) {
        std::reverse(outline.boundaryPx.begin(), outline.boundaryPx.end());
    }
    outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx);
    double around = perimeter<PixelFrame>(outline.boundaryPx);
    for (Loop& hole : outline.holesPx) {
        if (signedArea<PixelFrame>(hole) > 0.0) std::reverse(hole.begin(), hole.end());
        outline.areaPx2 += signedArea<PixelFrame>(hole);
        around += perimeter<PixelFrame>(hole);
    }
    const double share = std::clamp(drawnPx / std::max(around, 1.0), 0.0, 1.0);
    outline.edgeSdPx = std::sqrt((1.0 - share) * outline.edgeSdPx * outline.edgeSdPx + share * kHandSdPx * kHandSdPx);
    std::erase(outline.remarks, Remark::OutlineDoubtful);
    if (std::find(outline.remarks.begin(), outline.remarks.end(), Remark::OutlinedByHand) == outline.remarks.end()) {
        outline.remarks.push_back(Remark::OutlinedByHand);
    }
    return outline;
}

Refusal crossesRefusal() {
    return {"outline-crosses", "The outline would cross itself. Undo, and draw the stretch on one side only."};
}

}  // namespace ringrule
