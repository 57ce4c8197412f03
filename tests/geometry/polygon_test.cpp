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
