// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/refine.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "drawn_body.h"
#include "ringrule/geometry/polygon.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kBody = 0.08;
constexpr double kPlate = 0.6;

std::vector<PixelPoint> circle(PixelPoint centre, double radius, bool clockwise) {
    std::vector<PixelPoint> points;
    for (int i = 0; i < 120; ++i) {
        const double angle = (clockwise ? 1.0 : -1.0) * 2.0 * M_PI * i / 120.0;
        points.push_back(centre + PixelPoint{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
}

RefinedBoundary refinedDisc(double radius, double blur, double startRadius) {
    const PixelPoint centre{60.3, 59.6};
    const cv::Mat grey = test::drawn({120, 120}, blur, kBody, kPlate, [&](double x, double y) {
        return std::hypot(x - centre.x, y - centre.y) < radius;
    });
    RefineOptions options;
    options.stepPx = 1.2;
    options.contourLagPx = 0.0;
    options.inside = kBody;
    options.outside = kPlate;
    return refineBoundary(grey, photoTone(), circle(centre, startRadius, true), options);
}

}  // namespace

TEST_CASE("A disc's boundary is found to a few hundredths of a pixel") {
    // The tone is drawn a tenth from sRGB toward plain values (for JPEG), which moves an edge inward by up to 0.05 px
    // at this blur when the photo is uncompressed; the bent edge's own shift by blur is sigma²/(2 radius) = 0.01 px.
    for (const double blur : {0.7, 1.0}) {
        const RefinedBoundary disc = refinedDisc(30.0, blur, 29.0);
        const double radius = std::sqrt(signedArea<PixelFrame>(disc.pointsPx) / M_PI);
        CHECK_THAT(radius, WithinAbs(30.0, 0.07));
        // Pixels, and reading between them, add their own widths to the lens's blur: about sqrt(blur² + 1/6);
        // the pooled edge is binned by quarter pixels, and 0.2 px of blur does not move an edge.
        CHECK_THAT(disc.blurPx, WithinAbs(std::hypot(blur, 1.0 / std::sqrt(6.0)), 0.22));
        CHECK(disc.foundShare > 0.99);
        CHECK(disc.sdPx < 0.05);
    }
}

TEST_CASE("The boundary does not depend on where the contour began") {
    const double fromInside = signedArea<PixelFrame>(refinedDisc(25.0, 0.9, 24.0).pointsPx);
    const double fromOutside = signedArea<PixelFrame>(refinedDisc(25.0, 0.9, 26.0).pointsPx);
    // A hundredth of a pixel all round.
    CHECK_THAT(fromInside, WithinAbs(fromOutside, 0.01 * 2.0 * M_PI * 25.0));
}

TEST_CASE("A hole's boundary is found with the body outside it") {
    const PixelPoint centre{60.0, 60.0};
    const cv::Mat grey = test::drawn({120, 120}, 0.9, kBody, kPlate,
                                     [&](double x, double y) { return std::hypot(x - centre.x, y - centre.y) > 20.0; });
    RefineOptions options;
    options.contourLagPx = 0.0;
    options.inside = kBody;
    options.outside = kPlate;
    const RefinedBoundary hole = refineBoundary(grey, photoTone(), circle(centre, 20.8, false), options);
    CHECK_THAT(std::sqrt(-signedArea<PixelFrame>(hole.pointsPx) / M_PI), WithinAbs(20.0, 0.08));
}

TEST_CASE("Mirroring the photo mirrors the boundary") {
    const auto slab = [](double x, double y) { return std::abs(y - 0.3 * x - 30.0) < 9.0 && x > 15.0 && x < 95.0; };
    const cv::Mat grey = test::drawn({120, 120}, 0.9, kBody, kPlate, slab);
    cv::Mat flipped;
    cv::flip(grey, flipped, 1);
    std::vector<PixelPoint> contour{{15.0, 25.5}, {95.0, 49.5}, {95.0, 67.5}, {15.0, 43.5}};
    std::vector<PixelPoint> mirrored;
    for (auto it = contour.rbegin(); it != contour.rend(); ++it) mirrored.push_back({119.0 - it->x, it->y});
    RefineOptions options;
    options.contourLagPx = 0.0;
    options.inside = kBody;
    options.outside = kPlate;
    const double area = signedArea<PixelFrame>(refineBoundary(grey, photoTone(), contour, options).pointsPx);
    const double mirrorArea = signedArea<PixelFrame>(refineBoundary(flipped, photoTone(), mirrored, options).pointsPx);
    // The walk starts at another point, so the points differ; the area may differ by 0.02 px along the outline of 200
    // px.
    CHECK_THAT(area, WithinAbs(mirrorArea, 4.0));
    CHECK(area > 1000.0);
}

TEST_CASE("A shadow under the belly that is darker than half-way from body to plate does not move the edge") {
    constexpr double kPale = 0.2;
    constexpr double kLit = 0.37;
    constexpr double kShade = 0.255;  // between body and plate: 0.285 is half-way
    const auto slab = [](double x, double y) { return y > 40.0 && y < 66.0 && x > 12.0 && x < 108.0; };
    // The shadow is as deep as that along the trunk only, and ends softly, 1 to 15 px below the belly.
    const auto light = [&](double x, double y) {
        if (slab(x, y)) return kPale - 0.02 * std::max(0.0, y - 62.0);  // a round belly is darker at its rim
        const double along = std::clamp(1.6 - std::abs(x - 60.0) / 25.0, 0.0, 1.0);
        const double below = y < 60.0 ? 0.0 : std::clamp(1.0 - (y - 67.0) / 14.0, 0.0, 1.0);
        return kLit + (kShade - kLit) * along * below;
    };
    const cv::Mat grey = test::drawn({120, 120}, 0.8, light);
    RefineOptions options;
    options.stepPx = 1.2;
    options.contourLagPx = 0.0;
    options.inside = kPale;
    options.outside = kLit;
    const std::vector<PixelPoint> contour{{12.5, 40.5}, {107.5, 40.5}, {107.5, 65.5}, {12.5, 65.5}};
    const RefinedBoundary refined = refineBoundary(grey, photoTone(), contour, options);
    for (const PixelPoint at : refined.pointsPx) {
        // The light slopes on both sides by more than a tenth of the step a pixel, which a disc's does not.
        if (at.y > 53.0 && std::abs(at.x - 60.0) < 15.0) CHECK_THAT(at.y, WithinAbs(66.0, 0.3));
        CHECK(at.y < 66.6);  // also toward the shadow's ends, within the lens's blur
    }
    CHECK(refined.foundShare > 0.97);
}
