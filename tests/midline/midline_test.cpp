// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/midline/midline.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Outline of a tube round an arc: `radius` of the spine, `angle` it spans, `half` width at a share of its length.
template <class Half>
Outline tube(double radius, double angle, Half half) {
    std::vector<PixelPoint> back;
    std::vector<PixelPoint> belly;
    constexpr int kSteps = 1200;
    for (int i = 0; i <= kSteps; ++i) {
        const double share = static_cast<double>(i) / kSteps;
        const double a = angle * share;
        const PixelPoint outward{std::cos(a), std::sin(a)};
        const PixelPoint spine = PixelPoint{600.0, 600.0} + outward * radius;
        back.push_back(spine + outward * half(share));
        belly.push_back(spine - outward * half(share));
    }
    Outline outline;
    outline.boundaryPx = back;
    outline.boundaryPx.insert(outline.boundaryPx.end(), belly.rbegin(), belly.rend());
    outline.boundaryPx = resampledClosed<PixelFrame>(outline.boundaryPx, 1.0);
    if (signedArea<PixelFrame>(outline.boundaryPx) < 0.0)
        std::reverse(outline.boundaryPx.begin(), outline.boundaryPx.end());
    outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx);
    return outline;
}

double tapering(double share) {
    return 10.0 * std::sqrt(std::max(0.0, 1.0 - share)) * std::sqrt(std::min(1.0, 40.0 * share)) + 0.7;
}

Midline midlineOf(const Outline& outline) {
    const Outcome<Midline> found = findMidline({}, outline);
    REQUIRE(found.ok());
    return found.value();
}

template <class Move>
Outline moved(const Outline& outline, Move move) {
    Outline result = outline;
    for (PixelPoint& at : result.boundaryPx) at = move(at);
    if (signedArea<PixelFrame>(result.boundaryPx) < 0.0)
        std::reverse(result.boundaryPx.begin(), result.boundaryPx.end());
    result.areaPx2 = signedArea<PixelFrame>(result.boundaryPx);
    return result;
}

double farthestApart(const std::vector<PixelPoint>& line, const std::vector<PixelPoint>& from) {
    double farthest = 0.0;
    for (const PixelPoint at : from) farthest = std::max(farthest, project<PixelFrame>(line, at).distance);
    return farthest;
}

}  // namespace

TEST_CASE("The midline of a bent tube is its spine") {
    for (const double angle : {0.3, 1.2, 3.0}) {
        const double radius = 420.0;
        const Midline midline = midlineOf(tube(radius, angle, tapering));
        const double truth = radius * angle;
        // Two tips, each found to a few tenths of a pixel.
        CHECK_THAT(midline.lengthPx(), WithinAbs(truth, 0.8));
        for (std::size_t i = 5; i + 5 < midline.spinePx.size(); ++i) {
            // Chords of a tapering tube lean by its taper, and the front is blunt there: a few tenths of a pixel.
            CHECK_THAT(distance(midline.spinePx[i], PixelPoint{600.0, 600.0}), WithinAbs(radius, 0.4));
        }
    }
}

TEST_CASE("Half-widths are those of the tube") {
    const Midline midline = midlineOf(tube(500.0, 1.0, [](double) { return 12.0; }));
    const std::size_t middle = midline.spinePx.size() / 2;
    CHECK_THAT(midline.leftHalfWidthPx[middle], WithinAbs(12.0, 0.1));
    CHECK_THAT(midline.rightHalfWidthPx[middle], WithinAbs(12.0, 0.1));
}

TEST_CASE("A mirrored outline has the mirrored midline") {
    const Outline outline = tube(300.0, 2.0, tapering);
    const Midline midline = midlineOf(outline);
    const Midline mirrored = midlineOf(moved(outline, [](PixelPoint at) { return PixelPoint{1500.0 - at.x, at.y}; }));
    std::vector<PixelPoint> back;
    for (const PixelPoint at : mirrored.spinePx) back.push_back({1500.0 - at.x, at.y});
    // The grid of the first rough path is not mirrored: what the rounds leave of it is a tenth of a pixel.
    CHECK(farthestApart(midline.spinePx, back) < 0.25);
    CHECK_THAT(mirrored.lengthPx(), WithinAbs(midline.lengthPx(), 0.3));
}

TEST_CASE("Length ignores rotation and follows scale") {
    const Outline outline = tube(300.0, 1.5, tapering);
    const double length = midlineOf(outline).lengthPx();
    for (const double turn : {0.4, 1.9}) {
        const Midline turned = midlineOf(moved(outline, [&](PixelPoint at) {
            return PixelPoint{800.0 + std::cos(turn) * at.x - std::sin(turn) * at.y,
                              300.0 + std::sin(turn) * at.x + std::cos(turn) * at.y};
        }));
        CHECK_THAT(turned.lengthPx(), WithinAbs(length, 0.4));
    }
    const Midline doubled = midlineOf(moved(outline, [](PixelPoint at) { return at * 2.0; }));
    CHECK_THAT(doubled.lengthPx(), WithinRel(2.0 * length, 0.001));
}

TEST_CASE("A rectangle's midline runs from end to end") {
    Outline outline;
    outline.boundaryPx =
        resampledClosed<PixelFrame>(std::vector<PixelPoint>{{100, 100}, {500, 100}, {500, 124}, {100, 124}}, 1.0);
    outline.areaPx2 = 400.0 * 24.0;
    const Midline midline = midlineOf(outline);
    CHECK_THAT(midline.lengthPx(), WithinAbs(400.0, 0.6));
    CHECK(farthestApart({{100, 112}, {500, 112}}, midline.spinePx) < 0.3);
}

TEST_CASE("A circle has no midline") {
    std::vector<PixelPoint> circle;
    for (int i = 0; i < 400; ++i)
        circle.push_back(PixelPoint{200, 200} + PixelPoint{std::cos(i * M_PI / 200), std::sin(i * M_PI / 200)} * 60.0);
    Outline outline;
    outline.boundaryPx = circle;
    outline.areaPx2 = signedArea<PixelFrame>(circle);
    const Outcome<Midline> midline = findMidline({}, outline);
    REQUIRE_FALSE(midline.ok());
    CHECK(midline.refusal().reason == "no-midline");
    CHECK_FALSE(findMidline({}, Outline{}).ok());
}

TEST_CASE("A body that closes on itself is told by its hole") {
    // A straight tube that ends in a ring.
    Outline outline;
    const auto half = [](double) { return 10.0; };
    outline = tube(5000.0, 0.08, half);
    std::vector<PixelPoint> boundary{{100, 290}, {500, 290}};
    for (int i = -95; i <= 95; ++i) {
        const double a = i * M_PI / 100.0;
        boundary.push_back(PixelPoint{540, 300} + PixelPoint{std::cos(M_PI + 0.17 + (a + 0.95 * M_PI) * 0.95),
                                                             std::sin(M_PI + 0.17 + (a + 0.95 * M_PI) * 0.95)} *
                                                      45.0);
    }
    boundary.push_back({500, 310});
    boundary.push_back({100, 310});
    std::vector<PixelPoint> hole;
    for (int i = 0; i < 100; ++i)
        hole.push_back(PixelPoint{540, 300} + PixelPoint{std::cos(-i * M_PI / 50), std::sin(-i * M_PI / 50)} * 25.0);
    outline.boundaryPx = resampledClosed<PixelFrame>(boundary, 1.0);
    if (signedArea<PixelFrame>(outline.boundaryPx) < 0.0)
        std::reverse(outline.boundaryPx.begin(), outline.boundaryPx.end());
    outline.holesPx = {hole};
    outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx) + signedArea<PixelFrame>(hole);
    const Midline midline = midlineOf(outline);
    CHECK(midline.closedCoil);
    CHECK(std::count(midline.remarks.begin(), midline.remarks.end(), Remark::TailClosed) == 1);
    // What is left is the straight part, walked toward the ring.
    CHECK_THAT(midline.spinePx.front().x, WithinAbs(100.0, 2.0));
    CHECK(midline.spinePx.back().x < 520.0);
}

TEST_CASE("Walking back twice is walking forward") {
    const Midline midline = midlineOf(tube(300.0, 1.5, tapering));
    const Midline back = reversed(midline);
    CHECK(back.spinePx.front() == midline.spinePx.back());
    CHECK(back.leftHalfWidthPx.front() == midline.rightHalfWidthPx.back());
    CHECK(reversed(back).spinePx == midline.spinePx);
    CHECK(reversed(back).leftHalfWidthPx == midline.leftHalfWidthPx);
}
