// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <vector>

#include "ringrule/geometry/polygon.h"

using namespace ringrule;

namespace {

using Outline = std::vector<PlatePoint>;

std::span<const PlatePoint> view(const Outline& outline) {
    return outline;
}

/// How often two sides of a closed outline cross.
int crossings(const Outline& outline) {
    const std::size_t n = outline.size();
    const auto beside = [&](std::size_t side, std::size_t corner) {
        return cross(outline[(side + 1) % n] - outline[side], outline[corner % n] - outline[side]);
    };
    int count = 0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t k = i + 2; k < n; ++k) {
            if ((k + 1) % n == i) continue;
            if (beside(i, k) * beside(i, k + 1) < 0.0 && beside(k, i) * beside(k, i + 1) < 0.0) ++count;
        }
    }
    return count;
}

}  // namespace

TEST_CASE("Area and perimeter of a rectangle and of a circle", "[polygon]") {
    const Outline rectangle{{1, 1}, {5, 1}, {5, 4}, {1, 4}};
    CHECK(signedArea(view(rectangle)) == 12.0);  // clockwise as seen, y down
    CHECK(signedArea(view(Outline(rectangle.rbegin(), rectangle.rend()))) == -12.0);
    CHECK(perimeter(view(rectangle)) == 14.0);
    Outline circle;
    constexpr int kCorners = 1000;
    for (int i = 0; i < kCorners; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / kCorners;
        circle.push_back({7.0 * std::cos(angle), 7.0 * std::sin(angle)});
    }
    // A regular n-gon inside the circle: n/2 r² sin(2π/n) and 2 n r sin(π/n), exactly.
    CHECK(signedArea(view(circle)) == Approx(0.5 * kCorners * 49.0 * std::sin(2.0 * std::numbers::pi / kCorners)));
    CHECK(perimeter(view(circle)) == Approx(2.0 * kCorners * 7.0 * std::sin(std::numbers::pi / kCorners)));
}

TEST_CASE("Inside and outside of an outline with a bay", "[polygon]") {
    const Outline horseshoe{{0, 0}, {10, 0}, {10, 10}, {7, 10}, {7, 3}, {3, 3}, {3, 10}, {0, 10}};
    CHECK(contains(view(horseshoe), PlatePoint{1.5, 9.0}));
    CHECK(contains(view(horseshoe), PlatePoint{5.0, 1.0}));
    CHECK_FALSE(contains(view(horseshoe), PlatePoint{5.0, 6.0}));
    CHECK_FALSE(contains(view(horseshoe), PlatePoint{-1.0, 5.0}));
    CHECK_FALSE(contains(view(horseshoe), PlatePoint{11.0, 5.0}));
}

TEST_CASE("A closed outline in even steps keeps its shape", "[polygon]") {
    const Outline rectangle{{0, 0}, {40, 0}, {40, 20}, {0, 20}};
    const Outline even = resampledClosed(view(rectangle), 2.0);
    REQUIRE(even.size() == 60);
    CHECK(signedArea(view(even)) == Approx(800.0));
    CHECK(perimeter(view(even)) == Approx(120.0));
    CHECK(resampledClosed(view(rectangle), 1000.0).size() == 8);
}

TEST_CASE("Small loops of an outline give way to the crossing, large ones stay", "[polygon]") {
    // A square walked in steps of two whose upper side doubles back on itself around (5, 0).
    const Outline curled{{0, 0},   {2, 0},  {4, 0},  {6, -1}, {6, 1},  {5, 1},  {4, -1}, {8, 0}, {10, 0}, {10, 5},
                         {10, 10}, {8, 10}, {6, 10}, {4, 10}, {2, 10}, {0, 10}, {0, 8},  {0, 6}, {0, 4},  {0, 2}};
    const Outline simple = withoutCurls(view(curled), 8);
    CHECK(crossings(simple) == 0);
    CHECK(crossings(curled) > 0);
    CHECK(simple.size() < curled.size());
    // Every point that is not on a loop stays where it is.
    CHECK(simple.front() == curled.front());
    CHECK(simple.back() == curled.back());

    const Outline eight{{0, 0}, {1, 1}, {2, 2},   {3, 3}, {4, 4}, {5, 4},  {5, 2},  {5, 0},
                        {4, 0}, {3, 1}, {2, 2.5}, {1, 3}, {0, 4}, {-1, 3}, {-1, 2}, {-1, 1}};
    REQUIRE(crossings(eight) == 1);  // seven sides apart
    CHECK(withoutCurls(view(eight), 3).size() == eight.size());
    const Outline square{{0, 0}, {1, 0}, {2, 0}, {2, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}};
    CHECK(withoutCurls(view(square), 8).size() == square.size());
}
