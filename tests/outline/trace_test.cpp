// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outline/trace.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "drawn_body.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/geometry/polyline.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;

namespace {

constexpr PixelPoint kCentre{160.4, 130.7};
constexpr double kRadius = 70.0;

/// A disc before an uneven plate, with noise.
Photo discPhoto(double body, double plate) {
    Photo photo;
    photo.grey = test::drawn({320, 260}, 0.9, body, plate,
                             [](double x, double y) { return std::hypot(x - kCentre.x, y - kCentre.y) < kRadius; });
    cv::Mat noise(photo.grey.size(), CV_8SC1);
    cv::theRNG().state = 20310104;
    cv::randn(noise, 0.0, 2.0);
    cv::add(photo.grey, noise, photo.grey, cv::noArray(), CV_8UC1);
    return photo;
}

PixelPoint onCircle(double angleDeg, double off = 0.0) {
    const double angle = angleDeg * M_PI / 180.0;
    return kCentre + PixelPoint{std::cos(angle), std::sin(angle)} * (kRadius + off);
}

double farthestFromCircle(const std::vector<PixelPoint>& path) {
    double farthest = 0.0;
    for (const PixelPoint at : path) farthest = std::max(farthest, std::abs(distance(at, kCentre) - kRadius));
    return farthest;
}

}  // namespace

TEST_CASE("The path follows the edge between clicks that lie a few pixels off it") {
    const Photo photo = discPhoto(0.08, 0.6);
    const EdgeTrace trace(photo, onCircle(180.0, 4.0));
    CHECK(farthestFromCircle({trace.from()}) < 2.0);  // a pixel of the search's picture, which is halved here
    const std::vector<PixelPoint> path = trace.to(onCircle(290.0, -5.0));
    CHECK(farthestFromCircle(path) < 2.5);
    CHECK(distance(path.back(), trace.snapped(onCircle(290.0, -5.0))) < 1e-9);
    // 110 degrees of the circle and no detour; steps on a grid are up to 8 % longer than a smooth line.
    CHECK_THAT(lengthOf<PixelFrame>(path), WithinAbs(kRadius * 110.0 * M_PI / 180.0, 14.0));
}

TEST_CASE("Out of reach the path is a straight line") {
    const EdgeTrace trace(discPhoto(0.08, 0.6), {60.0, 60.0}, {.reachPx = 40.0});
    const std::vector<PixelPoint> path = trace.to({300.0, 200.0});
    REQUIRE(path.size() == 2);
    CHECK(path.back() == PixelPoint{300.0, 200.0});
    CHECK(trace.snapped({300.0, 200.0}) == PixelPoint{300.0, 200.0});
}

TEST_CASE("A trace through clicks is set on the edge to a fraction of a pixel, dark or light") {
    for (const auto& [body, plate] : {std::pair{0.08, 0.6}, std::pair{0.6, 0.05}}) {
        const Photo photo = discPhoto(body, plate);
        const std::vector<PixelPoint> clicks{onCircle(10.0, 3.0), onCircle(80.0, -4.0), onCircle(150.0, 5.0)};
        const std::vector<PixelPoint> path = traceThrough(photo, clicks);
        CHECK(farthestFromCircle(path) < 0.8);
        double mean = 0.0;
        for (const PixelPoint at : path) mean += distance(at, kCentre) - kRadius;
        // Half-way in light, like the outline itself: the tone's tenth moves it by 0.05 px, the bend by 0.01.
        CHECK_THAT(mean / static_cast<double>(path.size()), WithinAbs(0.0, 0.12));
    }
}

TEST_CASE("An outline traced by five clicks has the disc's area") {
    for (const auto& [body, plate] : {std::pair{0.08, 0.6}, std::pair{0.6, 0.05}}) {
        const Photo photo = discPhoto(body, plate);
        std::vector<PixelPoint> clicks;
        for (const double angle : {0.0, 75.0, 140.0, 220.0, 300.0})
            clicks.push_back(onCircle(angle, angle > 100 ? 3 : -3));
        const auto outline = traceOutline(photo, clicks);
        REQUIRE(outline.ok());
        // A tenth of a pixel all round.
        CHECK_THAT(outline.value().areaPx2, WithinAbs(M_PI * kRadius * kRadius, 0.12 * 2.0 * M_PI * kRadius));
        CHECK(signedArea<PixelFrame>(outline.value().boundaryPx) > 0.0);
        const auto& remarks = outline.value().remarks;
        CHECK(std::find(remarks.begin(), remarks.end(), Remark::OutlinedByHand) != remarks.end());
        std::reverse(clicks.begin(), clicks.end());
        const auto other = traceOutline(photo, clicks);
        REQUIRE(other.ok());
        CHECK_THAT(other.value().areaPx2, WithinAbs(outline.value().areaPx2, 0.1 * 2.0 * M_PI * kRadius));
    }
}

TEST_CASE("Clicks that do not go round an area make no outline") {
    const Photo photo = discPhoto(0.08, 0.6);
    for (const auto& clicks : {std::vector<PixelPoint>{onCircle(0.0), onCircle(60.0)},
                               std::vector<PixelPoint>{{30, 30}, {31, 30}, {30, 31}}}) {
        const auto outline = traceOutline(photo, clicks);
        REQUIRE_FALSE(outline.ok());
        CHECK(outline.refusal().reason == "trace-not-closed");
    }
}
