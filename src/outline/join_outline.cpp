// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>

#include <opencv2/imgproc.hpp>

#include "outline/bridge.h"
#include "outline/loop.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/outline/edit_outline.h"

namespace ringrule {
namespace {

constexpr double kFacing = 1.6;        ///< times the gap: points this near to the other part face it …
constexpr double kFacingMorePx = 3.0;  ///< … and a few pixels more, for narrow gaps

/// Indices of one part's points that face the other part: the run without break round the nearest one.
std::vector<std::size_t> facing(const Loop& loop, const std::vector<double>& gaps, double limitPx) {
    const auto nearest = static_cast<std::size_t>(std::min_element(gaps.begin(), gaps.end()) - gaps.begin());
    const std::size_t n = loop.size();
    std::size_t ahead = 0;
    while (ahead + 1 < n && gaps[(nearest + ahead + 1) % n] < limitPx) ++ahead;
    std::size_t behind = 0;
    while (behind + ahead + 1 < n && gaps[(nearest + n - behind - 1) % n] < limitPx) ++behind;
    std::vector<std::size_t> run;
    for (std::size_t k = 0; k <= behind + ahead; ++k) run.push_back((nearest + n - behind + k) % n);
    return run;
}

std::vector<double> gapsTo(const Loop& loop, const Loop& other) {
    std::vector<double> gaps;
    gaps.reserve(loop.size());
    for (const PixelPoint at : loop) gaps.push_back(nearestPlace(other, at).distancePx);
    return gaps;
}

/// The two bridges between the parts: from the first to the second, and back, walking clockwise.
struct Bridges {
    std::size_t leave = 0, arrive = 0, leaveBack = 0, arriveBack = 0;
    int count = 0;
};

/// Sides of the convex hull of both runs that lead from one part to the other: what bridges a gap without a bend.
Bridges bridgesOf(const Loop& one, const std::vector<std::size_t>& runOne, const Loop& other,
                  const std::vector<std::size_t>& runOther) {
    std::vector<cv::Point2f> points;
    const auto add = [&points](PixelPoint at) {
        points.emplace_back(static_cast<float>(at.x), static_cast<float>(at.y));
    };
    for (const std::size_t i : runOne) add(one[i]);
    for (const std::size_t i : runOther) add(other[i]);
    std::vector<int> hull;
    cv::convexHull(points, hull, true);
    std::vector<PixelPoint> corners;
    for (const int k : hull) {
        const cv::Point2f at = points[static_cast<std::size_t>(k)];
        corners.push_back({static_cast<double>(at.x), static_cast<double>(at.y)});
    }
    if (signedArea<PixelFrame>(corners) < 0.0) std::reverse(hull.begin(), hull.end());
    Bridges bridges;
    for (std::size_t k = 0; k < hull.size(); ++k) {
        const auto from = static_cast<std::size_t>(hull[k]);
        const auto to = static_cast<std::size_t>(hull[(k + 1) % hull.size()]);
        if (from < runOne.size() && to >= runOne.size()) {
            bridges.leave = runOne[from], bridges.arrive = runOther[to - runOne.size()];
            ++bridges.count;
        } else if (from >= runOne.size() && to < runOne.size()) {
            bridges.leaveBack = runOther[from - runOne.size()], bridges.arriveBack = runOne[to];
            ++bridges.count;
        }
    }
    return bridges;
}

void addWalk(const Loop& loop, std::size_t from, std::size_t to, Loop& walk) {
    for (std::size_t i = from; i != to; i = (i + 1) % loop.size()) walk.push_back(loop[i]);
    walk.push_back(loop[to]);
}

}  // namespace

std::optional<Bridged> bridged(const Outline& one, const Outline& other, double longestGapPx) {
    const Loop& a = one.boundaryPx;
    const Loop& b = other.boundaryPx;
    if (loopsCross(a, b) || contains<PixelFrame>(a, b.front()) || contains<PixelFrame>(b, a.front())) return {};
    const std::vector<double> gapsA = gapsTo(a, b);
    const double gapPx = *std::min_element(gapsA.begin(), gapsA.end());
    if (gapPx > longestGapPx) return {};
    const double limitPx = kFacing * gapPx + kFacingMorePx;
    const std::vector<std::size_t> runA = facing(a, gapsA, limitPx);
    const std::vector<std::size_t> runB = facing(b, gapsTo(b, a), limitPx);
    const Bridges bridges = bridgesOf(a, runA, b, runB);
    if (bridges.count != 2) return {};
    Bridged result;
    Outline& whole = result.outline;
    whole = one;
    Loop walk;
    addWalk(a, bridges.arriveBack, bridges.leave, walk);
    addWalk(b, bridges.arrive, bridges.leaveBack, walk);
    whole.boundaryPx = resampledClosed<PixelFrame>(walk, meanStepPx(a));
    if (crossesItself(whole.boundaryPx)) return {};
    whole.holesPx.insert(whole.holesPx.end(), other.holesPx.begin(), other.holesPx.end());
    whole.areaPx2 = signedArea<PixelFrame>(whole.boundaryPx);
    for (const Loop& hole : whole.holesPx) whole.areaPx2 += signedArea<PixelFrame>(hole);
    whole.edgeSdPx = std::max(one.edgeSdPx, other.edgeSdPx);
    for (const Remark remark : other.remarks) {
        if (std::find(whole.remarks.begin(), whole.remarks.end(), remark) == whole.remarks.end())
            whole.remarks.push_back(remark);
    }
    result.bridgesPx =
        distance(a[bridges.leave], b[bridges.arrive]) + distance(b[bridges.leaveBack], a[bridges.arriveBack]);
    result.facingPx =
        std::max(static_cast<double>(runA.size()) * meanStepPx(a), static_cast<double>(runB.size()) * meanStepPx(b));
    return result;
}

Outcome<Outline> joined(const Outline& one, const Outline& other, double longestGapPx) {
    assert(one.boundaryPx.size() >= 3 && other.boundaryPx.size() >= 3);
    auto whole = bridged(one, other, longestGapPx);
    if (!whole) {
        return Refusal{"join-too-far", "These two parts cannot be one animal: they lie too far apart, or overlap."};
    }
    return drawnByHand(std::move(whole->outline), whole->bridgesPx);
}

}  // namespace ringrule
