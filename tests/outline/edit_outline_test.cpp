// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/edit_outline.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "ringrule/geometry/polygon.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kTidy = 1e-6;

Outline outlineOf(const std::vector<PixelPoint>& corners) {
    Outline outline;
    outline.boundaryPx = resampledClosed<PixelFrame>(corners, 1.0);
    outline.areaPx2 = signedArea<PixelFrame>(outline.boundaryPx);
    outline.edgeSdPx = 0.1;
    outline.remarks = {Remark::OutlineDoubtful};
    return outline;
}

Outline box(double left, double top, double right, double bottom) {
    return outlineOf({{left, top}, {right, top}, {right, bottom}, {left, bottom}});
}

std::vector<PixelPoint> ring(PixelPoint centre, double radius, bool clockwise, int count = 160) {
    std::vector<PixelPoint> points;
    for (int i = 0; i < count; ++i) {
        const double angle = (clockwise ? 2.0 : -2.0) * M_PI * i / count;
        points.push_back(centre + PixelPoint{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
}

bool has(const Outline& outline, Remark remark) {
    return std::find(outline.remarks.begin(), outline.remarks.end(), remark) != outline.remarks.end();
}

double nearestDistance(const Outline& outline, PixelPoint to) {
    double nearest = 1e9;
    for (const PixelPoint at : outline.boundaryPx) nearest = std::min(nearest, distance(at, to));
    return nearest;
}

}  // namespace

TEST_CASE("A pulled place arrives where it is drawn, its neighbours follow, the rest stays") {
    const Outline slab = box(0.0, 0.0, 200.0, 40.0);
    const auto edited = pulled(slab, {100.3, 1.0}, {100.3, -12.0}, 20.0);
    REQUIRE(edited.ok());
    // Resampling in steps of about a pixel cuts a bump of this bend by well under a tenth.
    CHECK_THAT(nearestDistance(edited.value(), {100.3, -12.0}), WithinAbs(0.0, 0.6));
    CHECK_THAT(nearestDistance(edited.value(), {70.0, 0.0}), WithinAbs(0.0, 0.6));
    CHECK_THAT(nearestDistance(edited.value(), {100.0, 40.0}), WithinAbs(0.0, 0.6));
    // A bump of cos² over 20 px to either side has half the area of its rectangle: 12 · 20 px².
    CHECK_THAT(edited.value().areaPx2 - slab.areaPx2, WithinAbs(240.0, 5.0));
    CHECK(has(edited.value(), Remark::OutlinedByHand));
    CHECK_FALSE(has(edited.value(), Remark::OutlineDoubtful));
    // 40 of 480 px are drawn at 1 px: sqrt(0.917 · 0.01 + 0.083).
    CHECK_THAT(edited.value().edgeSdPx, WithinAbs(0.304, 0.005));
}

TEST_CASE("Pulling back gives the outline as it was") {
    const Outline slab = box(0.0, 0.0, 200.0, 40.0);
    const auto there = pulled(slab, {100.0, 0.0}, {100.0, -6.0}, 30.0);
    REQUIRE(there.ok());
    const auto back = pulled(there.value(), {100.0, -6.0}, {100.0, 0.0}, 30.0);
    REQUIRE(back.ok());
    // The bump's neighbours are told by arc length, which the bump made longer: within a fifth of its area.
    CHECK_THAT(back.value().areaPx2, WithinAbs(slab.areaPx2, 36.0));
}

TEST_CASE("A boundary pulled through the other side is refused") {
    const auto edited = pulled(box(0.0, 0.0, 200.0, 40.0), {100.0, 0.0}, {100.0, 60.0}, 20.0);
    REQUIRE_FALSE(edited.ok());
    CHECK(edited.refusal().reason == "outline-crosses");
}

TEST_CASE("A stretch is replaced by a path on its own side") {
    // A fin of 30 x 20 px on the upper side of a slab, cut off by a path along the slab's edge.
    const Outline finned = outlineOf({{0.0, 0.0},
                                      {80.0, 0.0},
                                      {80.0, -20.0},
                                      {110.0, -20.0},
                                      {110.0, 0.0},
                                      {200.0, 0.0},
                                      {200.0, 40.0},
                                      {0.0, 40.0}});
    for (const bool forward : {true, false}) {
        std::vector<PixelPoint> path{{70.0, 0.0}, {95.0, 0.0}, {120.0, 0.0}};
        if (!forward) std::reverse(path.begin(), path.end());
        const auto edited = withStretch(finned, path);
        REQUIRE(edited.ok());
        CHECK_THAT(edited.value().areaPx2, WithinAbs(200.0 * 40.0, 8.0));  // resampling rounds corners by a pixel
        CHECK(signedArea<PixelFrame>(edited.value().boundaryPx) > 0.0);
        CHECK(has(edited.value(), Remark::OutlinedByHand));
    }
}

TEST_CASE("A body that was found without its head gets it by one stretch") {
    const Outline trunk = box(100.0, 0.0, 300.0, 40.0);
    const auto edited =
        withStretch(trunk, std::vector<PixelPoint>{{100.0, 1.0}, {0.0, 18.0}, {0.0, 22.0}, {100.0, 39.0}});
    REQUIRE(edited.ok());
    // The head is a trapezium 100 px long, 4 px high in front and 38 behind.
    CHECK_THAT(edited.value().areaPx2, WithinAbs(200.0 * 40.0 + 100.0 * 21.0, 12.0));
}

TEST_CASE("A stretch that crosses the outline is refused") {
    const auto edited =
        withStretch(box(0.0, 0.0, 200.0, 40.0), std::vector<PixelPoint>{{50.0, 0.0}, {80.0, 70.0}, {110.0, 0.0}});
    REQUIRE_FALSE(edited.ok());
    CHECK(edited.refusal().reason == "outline-crosses");
}

TEST_CASE("Two discs that touch become two by one line") {
    // Discs of 30 px radius whose centres lie 50 px apart, as one outline.
    const double half = std::acos(25.0 / 30.0);
    std::vector<PixelPoint> both;
    for (int i = 0; i <= 200; ++i) {
        const double angle = half + (2.0 * M_PI - 2.0 * half) * i / 200.0;
        both.push_back({30.0 * std::cos(angle), 30.0 * std::sin(angle)});
    }
    for (int i = 0; i <= 200; ++i) {
        const double angle = M_PI + half + (2.0 * M_PI - 2.0 * half) * i / 200.0;
        both.push_back({50.0 + 30.0 * std::cos(angle), 30.0 * std::sin(angle)});
    }
    const Outline outline = outlineOf(both);
    const auto pieces = cutAlong(outline, std::vector<PixelPoint>{{25.0, -40.0}, {25.0, 40.0}});
    REQUIRE(pieces.ok());
    REQUIRE(pieces.value().size() == 2);
    // A disc less the segment beyond its chord at 25 px; polygons of 1 px steps lose 0.1 % of it.
    const double segment = 900.0 * half - 25.0 * std::sqrt(900.0 - 625.0);
    for (const Outline& piece : pieces.value()) {
        CHECK_THAT(piece.areaPx2, WithinRel(900.0 * M_PI - segment, 0.003));
        CHECK(has(piece, Remark::OutlinedByHand));
    }
    CHECK(contains<PixelFrame>(pieces.value()[0].boundaryPx, {0.0, 0.0}));  // left to right
    CHECK(contains<PixelFrame>(pieces.value()[1].boundaryPx, {50.0, 0.0}));
    CHECK_THAT(pieces.value()[0].areaPx2 + pieces.value()[1].areaPx2, WithinRel(outline.areaPx2, 0.002));
}

TEST_CASE("A ring cut on both sides is two halves without a hole") {
    Outline outline;
    outline.boundaryPx = ring({0.0, 0.0}, 50.0, true);
    outline.holesPx = {ring({0.0, 0.0}, 30.0, false)};
    outline.areaPx2 = M_PI * 1600.0;
    const auto pieces = cutAlong(outline, std::vector<PixelPoint>{{-60.0, 0.3}, {60.0, 0.3}});
    REQUIRE(pieces.ok());
    REQUIRE(pieces.value().size() == 2);
    for (const Outline& piece : pieces.value()) {
        CHECK(piece.holesPx.empty());
        CHECK_THAT(piece.areaPx2, WithinRel(M_PI * 800.0, 0.02));  // half a ring; 0.3 px off the middle is 0.5 %
    }
}

TEST_CASE("A bent line cuts as a straight one, and a hole stays with its part") {
    Outline outline = box(0.0, 0.0, 200.0, 40.0);
    outline.holesPx = {ring({160.0, 20.0}, 6.0, false, 40)};
    outline.areaPx2 -= M_PI * 36.0;
    const auto pieces = cutAlong(outline, std::vector<PixelPoint>{{100.0, -10.0}, {90.0, 20.0}, {100.0, 50.0}});
    REQUIRE(pieces.ok());
    REQUIRE(pieces.value().size() == 2);
    CHECK(pieces.value()[0].holesPx.empty());
    CHECK(pieces.value()[1].holesPx.size() == 1);
    // The line bends 20/3 px to the left of its ends at the slab's edge on average: a triangle of 40 px by 6.67 / 2.
    CHECK_THAT(pieces.value()[0].areaPx2, WithinAbs(40.0 * (96.67 - 6.67 / 2.0), 6.0));
}

TEST_CASE("A line that does not part the outline is refused") {
    const Outline slab = box(0.0, 0.0, 200.0, 40.0);
    for (const auto& line : {std::vector<PixelPoint>{{100.0, -50.0}, {150.0, -10.0}},    // beside it
                             std::vector<PixelPoint>{{100.0, -50.0}, {100.0, 20.0}}}) {  // ends inside
        const auto pieces = cutAlong(slab, line);
        REQUIRE_FALSE(pieces.ok());
        CHECK(pieces.refusal().reason == "cut-misses");
    }
}

TEST_CASE("Of two crossing bodies the upper one is freed and the lower one's parts are joined") {
    // A cross of two bars, 200 x 20 and, leaning, 20 wide and 160 high.
    const double lean = 0.35;
    const auto lower = [&](double y) { return 100.0 + lean * (y - 10.0); };
    const Outline crossed = outlineOf({{0.0, 0.0},
                                       {lower(0.0) - 10.0, 0.0},
                                       {lower(-70.0) - 10.0, -70.0},
                                       {lower(-70.0) + 10.0, -70.0},
                                       {lower(0.0) + 10.0, 0.0},
                                       {200.0, 0.0},
                                       {200.0, 20.0},
                                       {lower(20.0) + 10.0, 20.0},
                                       {lower(90.0) + 10.0, 90.0},
                                       {lower(90.0) - 10.0, 90.0},
                                       {lower(20.0) - 10.0, 20.0},
                                       {0.0, 20.0}});
    const auto first =
        cutAlong(crossed, std::vector<PixelPoint>{{80.0, -4.0}, {86.0, 0.5}, {107.0, 0.5}, {112.0, -4.0}});
    REQUIRE(first.ok());
    REQUIRE(first.value().size() == 2);
    const bool rightIsUpper = first.value()[1].areaPx2 < first.value()[0].areaPx2;
    const Outline above = first.value()[rightIsUpper ? 1 : 0];
    const auto second = cutAlong(first.value()[rightIsUpper ? 0 : 1],
                                 std::vector<PixelPoint>{{87.0, 24.0}, {93.0, 19.5}, {114.0, 19.5}, {119.0, 24.0}});
    REQUIRE(second.ok());
    REQUIRE(second.value().size() == 2);
    const bool leftIsBar = second.value()[0].areaPx2 > second.value()[1].areaPx2;
    const Outline bar = second.value()[leftIsBar ? 0 : 1];
    const Outline below = second.value()[leftIsBar ? 1 : 0];
    // Both lines run half a pixel inside the bar, over the 21 px between its neighbour's sides; corners are rounded by
    // a pixel.
    CHECK_THAT(bar.areaPx2, WithinAbs(200.0 * 20.0 - 21.0, 8.0));
    const auto whole = joined(above, below, 40.0);
    REQUIRE(whole.ok());
    CHECK_THAT(whole.value().areaPx2, WithinAbs(160.0 * 20.0, 45.0));  // the same, and the flanks of the drawn lines
    CHECK(signedArea<PixelFrame>(whole.value().boundaryPx) > 0.0);
}

TEST_CASE("Parts that lie too far apart or overlap are not joined") {
    CHECK(joined(box(0.0, 0.0, 50.0, 20.0), box(100.0, 0.0, 150.0, 20.0), 40.0).refusal().reason == "join-too-far");
    CHECK(joined(box(0.0, 0.0, 50.0, 20.0), box(40.0, 0.0, 150.0, 20.0), 40.0).refusal().reason == "join-too-far");
}

TEST_CASE("A hole is put in and filled again") {
    const Outline slab = box(0.0, 0.0, 200.0, 60.0);
    const auto holed = withHole(slab, ring({100.0, 30.0}, 10.0, true, 60));
    REQUIRE(holed.ok());
    CHECK_THAT(holed.value().areaPx2, WithinAbs(slab.areaPx2 - M_PI * 100.0, 2.0));
    CHECK(signedArea<PixelFrame>(holed.value().holesPx[0]) < kTidy);
    const Outline filled = withoutHole(holed.value(), {102.0, 31.0});
    CHECK(filled.holesPx.empty());
    CHECK_THAT(filled.areaPx2, WithinAbs(slab.areaPx2, kTidy));
    CHECK(withoutHole(slab, {10.0, 10.0}).areaPx2 == slab.areaPx2);
    CHECK_FALSE(withHole(slab, ring({100.0, 30.0}, 40.0, true, 60)).ok());
}
