// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <array>
#include <vector>

#include "ringrule/geometry/plane_map.h"

using namespace ringrule;

namespace {

using Map = PlaneMap<PlateFrame, PixelFrame>;

Map perspective() {
    Eigen::Matrix3d matrix;
    matrix << 9.0, 0.4, 150.0, -0.3, 8.5, 90.0, 2e-4, -1e-4, 1.0;
    return Map(matrix);
}

std::vector<Eigen::Vector2d> grid() {
    std::vector<Eigen::Vector2d> points;
    for (double y = 0.0; y <= 120.0; y += 40.0)
        for (double x = 0.0; x <= 200.0; x += 50.0) points.emplace_back(x, y);
    return points;
}

std::vector<Eigen::Vector2d> mapped(const Map& map, const std::vector<Eigen::Vector2d>& points) {
    std::vector<Eigen::Vector2d> images;
    for (const auto& p : points) {
        const PixelPoint q = map({p.x(), p.y()});
        images.emplace_back(q.x, q.y);
    }
    return images;
}

}  // namespace

TEST_CASE("A homography is found again from its own points", "[plane_map]") {
    const Map truth = perspective();
    auto points = grid();
    SECTION("twenty points") {}
    SECTION("four points") {
        points = {{0.0, 0.0}, {200.0, 0.0}, {200.0, 120.0}, {0.0, 120.0}};
    }
    const auto matrix = fitHomography(points, mapped(truth, points));
    REQUIRE(matrix);
    const Map found(*matrix);
    // Pixels of order 1000 in double precision through a singular value decomposition: far below 1e-8.
    for (const PlatePoint p : {PlatePoint{13.0, 17.0}, {180.0, 100.0}, {-20.0, 140.0}})
        CHECK(distance(found(p), truth(p)) < 1e-8);
}

TEST_CASE("Map and inverse are each other's inverse, the Jacobian is the slope", "[plane_map]") {
    const Map map = perspective();
    const PlatePoint p{70.0, 33.0};
    CHECK(distance(map.inverse()(map(p)), p) < 1e-10);
    const Eigen::Matrix2d slope = map.jacobian(p);
    const double h = 1e-4;  // the error of central differences is of order h² times 1e-5
    const PixelPoint dx = (map({p.x + h, p.y}) - map({p.x - h, p.y})) * (0.5 / h);
    const PixelPoint dy = (map({p.x, p.y + h}) - map({p.x, p.y - h})) * (0.5 / h);
    CHECK(slope(0, 0) == Approx(dx.x).margin(1e-7));
    CHECK(slope(1, 0) == Approx(dx.y).margin(1e-7));
    CHECK(slope(0, 1) == Approx(dy.x).margin(1e-7));
    CHECK(slope(1, 1) == Approx(dy.y).margin(1e-7));
}

TEST_CASE("Noise averages out over the points", "[plane_map]") {
    const Map truth = perspective();
    const auto points = grid();
    auto images = mapped(truth, points);
    // A fixed pattern of ±0.1 px.
    for (std::size_t i = 0; i < images.size(); ++i)
        images[i] += Eigen::Vector2d(i % 2 == 0 ? 0.1 : -0.1, i % 3 == 0 ? 0.1 : -0.05);
    const auto matrix = fitHomography(points, images);
    REQUIRE(matrix);
    CHECK(distance(Map(*matrix)({100.0, 60.0}), truth({100.0, 60.0})) < 0.1);
}

TEST_CASE("Points that do not determine a homography give none", "[plane_map]") {
    const std::vector<Eigen::Vector2d> line{{0, 0}, {1, 1}, {2, 2}, {3, 3}, {4, 4}},
        square{{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    const std::vector<Eigen::Vector2d> onePlace(5, Eigen::Vector2d(2.0, 3.0));
    CHECK_FALSE(fitHomography(line, line));
    CHECK_FALSE(fitHomography(onePlace, onePlace));
    CHECK_FALSE(fitHomography(std::vector<Eigen::Vector2d>(square.begin(), square.begin() + 3),
                              std::vector<Eigen::Vector2d>(square.begin(), square.begin() + 3)));
    CHECK_FALSE(fitHomography(square, std::vector<Eigen::Vector2d>{{0, 0}, {1, 1}, {2, 2}, {3, 3}}));
    CHECK(fitHomography(square, square));
}
