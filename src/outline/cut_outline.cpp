// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>

#include "outline/loop.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"
#include "ringrule/outline/edit_outline.h"

namespace ringrule {
namespace {

constexpr double kSliverShare = 0.01;  ///< of the outline's area: smaller pieces are the line's, not an animal's
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

/// A crossing of the line with one of the outline's loops.
struct Crossing {
    std::size_t loop = 0;
    LoopPlace place;
    double alongLine = 0.0;         ///< arc length on the line
    std::size_t partner = kNobody;  ///< the crossing at the other end of the cut through the body
    bool walked = false;
};

struct Cutting {
    std::vector<Loop> loops;
    std::vector<PixelPoint> line;
    std::vector<double> along;  ///< arc lengths on the line
    std::vector<Crossing> crossings;
    double stepPx = 1.0;
    double cutPx = 0.0;
};

bool inBody(const Cutting& cutting, PixelPoint at) {
    if (!contains<PixelFrame>(cutting.loops[0], at)) return false;
    return std::none_of(cutting.loops.begin() + 1, cutting.loops.end(),
                        [&](const Loop& hole) { return contains<PixelFrame>(hole, at); });
}

void findCrossings(Cutting& cutting) {
    for (std::size_t k = 0; k < cutting.loops.size(); ++k) {
        const Loop& loop = cutting.loops[k];
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const PixelPoint a = loop[i];
            const PixelPoint b = loop[(i + 1) % loop.size()];
            for (std::size_t j = 0; j + 1 < cutting.line.size(); ++j) {
                const auto met = crossingOf(a, b, cutting.line[j], cutting.line[j + 1]);
                if (!met) continue;
                const double step = cutting.along[j + 1] - cutting.along[j];
                cutting.crossings.push_back(
                    {k, {i, met->shareAb, a + (b - a) * met->shareAb, 0.0}, cutting.along[j] + met->shareCd * step});
            }
        }
    }
    std::sort(cutting.crossings.begin(), cutting.crossings.end(),
              [](const Crossing& one, const Crossing& other) { return one.alongLine < other.alongLine; });
}

/// Crossings between which the line runs through the body become partners.
void pairUp(Cutting& cutting) {
    for (std::size_t i = 0; i + 1 < cutting.crossings.size(); ++i) {
        Crossing& one = cutting.crossings[i];
        Crossing& next = cutting.crossings[i + 1];
        if (one.partner != kNobody) continue;
        const double middle = 0.5 * (one.alongLine + next.alongLine);
        if (!inBody(cutting, pointAt<PixelFrame>(cutting.line, cutting.along, middle))) continue;
        one.partner = i + 1;
        next.partner = i;
        cutting.cutPx += next.alongLine - one.alongLine;
    }
}

/// Points strictly between two places on the line.
void addCut(const Cutting& cutting, const Crossing& from, const Crossing& to, Loop& walk) {
    const double length = to.alongLine - from.alongLine;
    const long steps = std::max(1L, std::lround(std::abs(length) / cutting.stepPx));
    walk.push_back(from.place.atPx);
    for (long k = 1; k < steps; ++k) {
        const double at = from.alongLine + length * static_cast<double>(k) / static_cast<double>(steps);
        walk.push_back(pointAt<PixelFrame>(cutting.line, cutting.along, at));
    }
    walk.push_back(to.place.atPx);
}

/// The next paired crossing on the loop, walking forward from `from`; `from` itself when there is no other.
std::size_t nextOnLoop(const Cutting& cutting, std::size_t from) {
    const Crossing& here = cutting.crossings[from];
    const auto size = static_cast<double>(cutting.loops[here.loop].size());
    const double start = static_cast<double>(here.place.segment) + here.place.share;
    std::size_t best = from;
    double least = size;
    for (std::size_t i = 0; i < cutting.crossings.size(); ++i) {
        const Crossing& other = cutting.crossings[i];
        if (i == from || other.loop != here.loop || other.partner == kNobody) continue;
        double ahead = static_cast<double>(other.place.segment) + other.place.share - start;
        if (ahead < 0.0) ahead += size;
        if (ahead < least) least = ahead, best = i;
    }
    return best;
}

/// The closed walk that arrives at crossing `start`: over the cut to its partner, on along that one's loop, and so on.
Loop walkFrom(Cutting& cutting, std::size_t start) {
    Loop walk;
    std::size_t at = start;
    do {
        cutting.crossings[at].walked = true;
        const std::size_t partner = cutting.crossings[at].partner;
        addCut(cutting, cutting.crossings[at], cutting.crossings[partner], walk);
        const std::size_t next = nextOnLoop(cutting, partner);
        const Crossing& from = cutting.crossings[partner];
        const Crossing& to = cutting.crossings[next];
        if (next == partner) {
            const LoopPlace back{from.place.segment, from.place.share - 1e-12, from.place.atPx, 0.0};
            const auto points = between(cutting.loops[from.loop], from.place, back);
            walk.insert(walk.end(), points.begin(), points.end());
        } else {
            const auto points = between(cutting.loops[from.loop], from.place, to.place);
            walk.insert(walk.end(), points.begin(), points.end());
        }
        at = next;
    } while (at != start);
    return walk;
}

/// All loops after the cut: those that the line did not touch, and the new walks.
std::vector<Loop> loopsAfter(Cutting& cutting) {
    std::vector<bool> touched(cutting.loops.size(), false);
    for (const Crossing& crossing : cutting.crossings) {
        if (crossing.partner != kNobody) touched[crossing.loop] = true;
    }
    std::vector<Loop> after;
    for (std::size_t k = 0; k < cutting.loops.size(); ++k) {
        if (!touched[k]) after.push_back(cutting.loops[k]);
    }
    for (std::size_t i = 0; i < cutting.crossings.size(); ++i) {
        if (cutting.crossings[i].partner != kNobody && !cutting.crossings[i].walked) {
            after.push_back(walkFrom(cutting, i));
        }
    }
    return after;
}

double leftmost(const Outline& outline) {
    return std::min_element(outline.boundaryPx.begin(), outline.boundaryPx.end(),
                            [](PixelPoint a, PixelPoint b) { return a.x < b.x; })
        ->x;
}

/// Each clockwise loop with the holes that lie inside it.
std::vector<Outline> piecesOf(const std::vector<Loop>& loops, const Outline& whole, double cutPx) {
    std::vector<Outline> pieces;
    for (const Loop& loop : loops) {
        if (signedArea<PixelFrame>(loop) < kSliverShare * whole.areaPx2) continue;
        Outline piece = whole;
        piece.boundaryPx = resampledClosed<PixelFrame>(loop, meanStepPx(whole.boundaryPx));
        piece.holesPx.clear();
        for (const Loop& hole : loops) {
            if (signedArea<PixelFrame>(hole) < 0.0 && contains<PixelFrame>(loop, hole.front())) {
                piece.holesPx.push_back(hole);
            }
        }
        pieces.push_back(drawnByHand(std::move(piece), cutPx));
    }
    std::sort(pieces.begin(), pieces.end(),
              [](const Outline& one, const Outline& other) { return leftmost(one) < leftmost(other); });
    return pieces;
}

}  // namespace

Outcome<std::vector<Outline>> cutAlong(const Outline& outline, std::span<const PixelPoint> linePx) {
    assert(outline.boundaryPx.size() >= 3 && linePx.size() >= 2);
    Cutting cutting;
    cutting.loops.push_back(outline.boundaryPx);
    cutting.loops.insert(cutting.loops.end(), outline.holesPx.begin(), outline.holesPx.end());
    cutting.line.assign(linePx.begin(), linePx.end());
    cutting.along = arcLengths<PixelFrame>(cutting.line);
    cutting.stepPx = meanStepPx(outline.boundaryPx);
    findCrossings(cutting);
    pairUp(cutting);
    std::vector<Outline> pieces = piecesOf(loopsAfter(cutting), outline, cutting.cutPx);
    if (pieces.size() < 2) {
        return Refusal{"cut-misses", "The line does not part the animal. Draw it right across, from plate to plate."};
    }
    return pieces;
}

}  // namespace ringrule
