// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <vector>

#include "ringrule/geometry/polyline.h"

using namespace ringrule;

namespace {

using Line = std::vector<PixelPoint>;

// A quarter of a circle of radius 100 in 200 chords.
Line quarterCircle() {
    Line line;
    for (int i = 0; i <= 200; ++i) {
        const double angle = 0.5 * std::numbers::pi * i / 200.0;
        line.push_back({100.0 * std::cos(angle), 100.0 * std::sin(angle)});
    }
    return line;
}

std::span<const PixelPoint> view(const Line& line) {
    return line;
}

}  // namespace

TEST_CASE("Length of a polyline is that of its pieces", "[polyline]") {
    const Line corner{{0, 0}, {3, 4}, {3, 10}};
    CHECK(lengthOf(view(corner)) == 11.0);
    CHECK(arcLengths(view(corner)) == std::vector<double>{0.0, 5.0, 11.0});
    CHECK(lengthOf(view(Line{{2, 2}})) == 0.0);
    CHECK(arcLengths(view(Line{})).empty());
    // Chords of angle a are shorter than their arcs by a²/24: 2.6e-6 here.
    CHECK(lengthOf(view(quarterCircle())) == Approx(50.0 * std::numbers::pi).epsilon(3e-6));
}

TEST_CASE("Even steps keep both ends and the length", "[polyline]") {
    const Line line = quarterCircle();
    const Line even = resampled(view(line), 51);
    REQUIRE(even.size() == 51);
    CHECK(distance(even.front(), line.front()) < 1e-12);
    CHECK(distance(even.back(), line.back()) < 1e-9);
    for (std::size_t i = 1; i < even.size(); ++i)
        CHECK(distance(even[i], even[i - 1]) == Approx(std::numbers::pi).epsilon(1e-4));
}

TEST_CASE("A point at an arc length, held to the ends", "[polyline]") {
    const Line corner{{0, 0}, {10, 0}, {10, 10}};
    const auto along = arcLengths(view(corner));
    CHECK(pointAt(view(corner), along, 4.0) == PixelPoint{4, 0});
    CHECK(pointAt(view(corner), along, 13.0) == PixelPoint{10, 3});
    CHECK(pointAt(view(corner), along, -1.0) == PixelPoint{0, 0});
    CHECK(pointAt(view(corner), along, 99.0) == PixelPoint{10, 10});
}

TEST_CASE("Projection finds the nearest place", "[polyline]") {
    const Line corner{{0, 0}, {10, 0}, {10, 10}};
    const auto side = project(view(corner), PixelPoint{4, 3});
    CHECK(side.along == 4.0);
    CHECK(side.distance == 3.0);
    CHECK(side.at == PixelPoint{4, 0});
    const auto beyond = project(view(corner), PixelPoint{13, 14});
    CHECK(beyond.along == 20.0);
    CHECK(beyond.distance == 5.0);
}
