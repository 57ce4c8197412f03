// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/edit_outline.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "outline/loop.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

namespace ringrule {
namespace {

/// The boundary (0) and the holes (1 …) of an outline as one row of loops.
Loop& loopOf(Outline& outline, std::size_t which) {
    return which == 0 ? outline.boundaryPx : outline.holesPx[which - 1];
}
const Loop& loopOf(const Outline& outline, std::size_t which) {
    return which == 0 ? outline.boundaryPx : outline.holesPx[which - 1];
}

std::size_t loopCount(const Outline& outline) {
    return outline.holesPx.size() + 1;
}

/// Whether a changed loop crosses itself or another one.
bool tangled(const Outline& outline, std::size_t changed) {
    const Loop& loop = loopOf(outline, changed);
    if (loop.size() < 8 || crossesItself(loop)) return true;
    for (std::size_t k = 0; k < loopCount(outline); ++k) {
        if (k != changed && loopsCross(loop, loopOf(outline, k))) return true;
    }
    return false;
}

double meanDistance(std::span<const PixelPoint> points, std::span<const PixelPoint> path) {
    double sum = 0.0;
    for (const PixelPoint point : points) sum += project<PixelFrame>(path, point).distance;
    return sum / static_cast<double>(points.size());
}

/// How far apart two stretches between the same ends lie, on average and from both sides.
double apart(std::span<const PixelPoint> one, std::span<const PixelPoint> other) {
    return meanDistance(one, other) + meanDistance(other, one);
}

std::vector<PixelPoint> withEnds(const LoopPlace& from, std::vector<PixelPoint> middle, const LoopPlace& to) {
    middle.insert(middle.begin(), from.atPx);
    middle.push_back(to.atPx);
    return middle;
}

/// Arc length from a place to each point of its loop, the shorter way round.
std::vector<double> distancesAlong(const Loop& loop, const LoopPlace& place) {
    std::vector<double> along(loop.size());
    const double around = perimeter<PixelFrame>(loop);
    const std::size_t first = (place.segment + 1) % loop.size();
    double sum = distance(place.atPx, loop[first]);
    for (std::size_t k = 0; k < loop.size(); ++k) {
        const std::size_t i = (first + k) % loop.size();
        along[i] = std::min(sum, std::max(0.0, around - sum));
        sum += distance(loop[i], loop[(i + 1) % loop.size()]);
    }
    return along;
}

}  // namespace

Outcome<Outline> pulled(const Outline& outline, PixelPoint grabPx, PixelPoint toPx, double reachPx) {
    assert(outline.boundaryPx.size() >= 3 && reachPx > 0.0);
    std::size_t which = 0;
    LoopPlace place = nearestPlace(outline.boundaryPx, grabPx);
    for (std::size_t k = 1; k < loopCount(outline); ++k) {
        const LoopPlace other = nearestPlace(loopOf(outline, k), grabPx);
        if (other.distancePx < place.distancePx) place = other, which = k;
    }
    Outline edited = outline;
    Loop& loop = loopOf(edited, which);
    const double stepPx = meanStepPx(loop);
    // The grabbed place becomes a point of its own, so that it arrives where it is drawn.
    loop.insert(loop.begin() + static_cast<std::ptrdiff_t>(place.segment) + 1, place.atPx);
    const std::vector<double> along = distancesAlong(loop, {place.segment, 1.0, place.atPx, 0.0});
    const PixelPoint move = toPx - place.atPx;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        if (along[i] >= reachPx) continue;
        const double share = std::cos(0.5 * M_PI * along[i] / reachPx);
        loop[i] = loop[i] + move * (share * share);
    }
    loop = resampledClosed<PixelFrame>(loop, stepPx);
    if (tangled(edited, which)) return crossesRefusal();
    return drawnByHand(std::move(edited), 2.0 * reachPx);
}

Outcome<Outline> withStretch(const Outline& outline, std::span<const PixelPoint> pathPx) {
    assert(outline.boundaryPx.size() >= 3 && pathPx.size() >= 2);
    std::size_t which = 0;
    LoopPlace from;
    LoopPlace to;
    double nearest = 1e300;
    for (std::size_t k = 0; k < loopCount(outline); ++k) {
        const LoopPlace a = nearestPlace(loopOf(outline, k), pathPx.front());
        const LoopPlace b = nearestPlace(loopOf(outline, k), pathPx.back());
        if (a.distancePx + b.distancePx < nearest) {
            nearest = a.distancePx + b.distancePx;
            which = k, from = a, to = b;
        }
    }
    Outline edited = outline;
    Loop& loop = loopOf(edited, which);
    std::vector<PixelPoint> path = evenPath(pathPx, meanStepPx(loop));
    const std::vector<PixelPoint> ahead = withEnds(from, between(loop, from, to), to);
    const std::vector<PixelPoint> behind = withEnds(to, between(loop, to, from), from);
    const bool replaceAhead = apart(path, ahead) <= apart(path, behind);
    if (!replaceAhead) std::reverse(path.begin(), path.end());
    const std::vector<PixelPoint>& kept = replaceAhead ? behind : ahead;
    // The path stands for the whole stretch; the kept part gives up its two end places, which the path's ends replace.
    Loop changed(path.begin(), path.end());
    changed.insert(changed.end(), kept.begin() + 1, kept.end() - 1);
    loop = resampledClosed<PixelFrame>(changed, meanStepPx(loop));
    if (tangled(edited, which)) return crossesRefusal();
    return drawnByHand(std::move(edited), lengthOf<PixelFrame>(pathPx));
}

Outcome<Outline> withHole(const Outline& outline, std::span<const PixelPoint> rimPx) {
    assert(outline.boundaryPx.size() >= 3 && rimPx.size() >= 3);
    Outline edited = outline;
    edited.holesPx.push_back(resampledClosed<PixelFrame>(rimPx, meanStepPx(outline.boundaryPx)));
    const Loop& rim = edited.holesPx.back();
    if (!contains<PixelFrame>(outline.boundaryPx, rim.front()) || tangled(edited, loopCount(edited) - 1)) {
        return crossesRefusal();
    }
    return drawnByHand(std::move(edited), perimeter<PixelFrame>(rim));
}

Outline withoutHole(const Outline& outline, PixelPoint insidePx) {
    Outline edited = outline;
    const auto filled = std::find_if(edited.holesPx.begin(), edited.holesPx.end(),
                                     [&](const Loop& hole) { return contains<PixelFrame>(hole, insidePx); });
    if (filled == edited.holesPx.end()) return edited;
    edited.holesPx.erase(filled);
    return drawnByHand(std::move(edited), 0.0);
}

}  // namespace ringrule
