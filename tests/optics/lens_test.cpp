// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <vector>

#include <Eigen/LU>
#include <opencv2/calib3d.hpp>

#include "ringrule/optics/lens.h"

using namespace ringrule;

namespace {

Lens benchLens() {
    return {8500.0, 8490.0, 1998.0, 1503.0, {-0.15, 0.08, 0.0003, -0.0002, 0.01}, 4000, 3000};
}

Lens wideLens() {
    return {2400.0, 2400.0, 2010.0, 1480.0, {-0.22, 0.06, -0.0008, 0.0005, -0.008}, 4000, 3000};
}

const std::vector<PixelPoint> kPixels{{0, 0}, {3999, 0}, {1998, 1503}, {120.5, 2900.25}, {3700, 1500}, {2100, 40}};

}  // namespace

TEST_CASE("Undistorting agrees with OpenCV", "[lens]") {
    const Lens lens = GENERATE(benchLens(), wideLens());
    const auto view = PhotoLens::of(lens, 4000, 3000);
    REQUIRE(view);
    const cv::Matx33d matrix(lens.focalXPx, 0, lens.centreXPx, 0, lens.focalYPx, lens.centreYPx, 0, 0, 1);
    const std::vector<double> coefficients(lens.distortion.begin(), lens.distortion.end());
    for (const PixelPoint p : kPixels) {
        std::vector<cv::Point2d> ideal;
        cv::undistortPoints(std::vector<cv::Point2d>{{p.x, p.y}}, ideal, matrix, coefficients, cv::noArray(),
                            cv::noArray(),
                            cv::TermCriteria(cv::TermCriteria::COUNT | cv::TermCriteria::EPS, 200, 1e-13));
        const Eigen::Vector2d ray = view->rayFromPixel(p);
        CHECK(ray.x() == Approx(ideal[0].x).margin(1e-9));
        CHECK(ray.y() == Approx(ideal[0].y).margin(1e-9));
    }
}

TEST_CASE("Distorting agrees with OpenCV", "[lens]") {
    const Lens lens = GENERATE(benchLens(), wideLens());
    const auto view = PhotoLens::of(lens, 4000, 3000);
    const cv::Matx33d matrix(lens.focalXPx, 0, lens.centreXPx, 0, lens.focalYPx, lens.centreYPx, 0, 0, 1);
    const std::vector<double> coefficients(lens.distortion.begin(), lens.distortion.end());
    for (const Eigen::Vector2d& ray :
         {Eigen::Vector2d(0.1, -0.05), Eigen::Vector2d(-0.2, 0.15), Eigen::Vector2d(0, 0)}) {
        std::vector<cv::Point2d> pixels;
        cv::projectPoints(std::vector<cv::Point3d>{{ray.x(), ray.y(), 1.0}}, cv::Vec3d(), cv::Vec3d(), matrix,
                          coefficients, pixels);
        const PixelPoint pixel = view->pixelFromRay(ray);
        CHECK(pixel.x == Approx(pixels[0].x).margin(1e-8));
        CHECK(pixel.y == Approx(pixels[0].y).margin(1e-8));
    }
}

TEST_CASE("Distorting and undistorting undo each other", "[lens]") {
    const Lens lens = GENERATE(benchLens(), wideLens());
    for (const double x : {-0.3, 0.0, 0.17}) {
        for (const double y : {-0.2, 0.01, 0.25}) {
            const Eigen::Vector2d ideal(x, y);
            CHECK((undistorted(lens, distorted(lens, ideal)) - ideal).norm() < 1e-12);
            const double h = 1e-6;
            const Eigen::Matrix2d slope = distortionJacobian(lens, ideal);
            const Eigen::Vector2d dx = (distorted(lens, {x + h, y}) - distorted(lens, {x - h, y})) / (2 * h);
            const Eigen::Vector2d dy = (distorted(lens, {x, y + h}) - distorted(lens, {x, y - h})) / (2 * h);
            CHECK((slope.col(0) - dx).norm() < 1e-9);
            CHECK((slope.col(1) - dy).norm() < 1e-9);
        }
    }
}

TEST_CASE("A photo of half the size sees the same rays", "[lens]") {
    const auto whole = PhotoLens::of(wideLens(), 4000, 3000), half = PhotoLens::of(wideLens(), 2000, 1500);
    REQUIRE(half);
    CHECK_FALSE(whole->scaled());
    CHECK(half->scaled());
    for (const PixelPoint p : kPixels)
        CHECK((half->rayFromPixel({(p.x + 0.5) / 2 - 0.5, (p.y + 0.5) / 2 - 0.5}) - whole->rayFromPixel(p)).norm() <
              1e-12);
}

TEST_CASE("A photo turned upright sees the same rays, turned", "[lens]") {
    const auto stored = PhotoLens::of(wideLens(), 4000, 3000);
    const PixelPoint p{700, 2100};
    const Eigen::Vector2d ray = stored->rayFromPixel(p);
    // EXIF 2.3, tag 0x0112: where a stored pixel and the sensor's axes come to lie.
    struct Turned {
        int orientation;
        PixelPoint pixel;
        Eigen::Vector2d ray;
    };
    const std::vector<Turned> all{{1, {700, 2100}, {ray.x(), ray.y()}},   {2, {3299, 2100}, {-ray.x(), ray.y()}},
                                  {3, {3299, 899}, {-ray.x(), -ray.y()}}, {4, {700, 899}, {ray.x(), -ray.y()}},
                                  {5, {2100, 700}, {ray.y(), ray.x()}},   {6, {899, 700}, {-ray.y(), ray.x()}},
                                  {7, {899, 3299}, {-ray.y(), -ray.x()}}, {8, {2100, 3299}, {ray.y(), -ray.x()}}};
    for (const Turned& turned : all) {
        CAPTURE(turned.orientation);
        const bool swaps = turned.orientation >= 5;
        const auto lens = PhotoLens::of(wideLens(), swaps ? 3000 : 4000, swaps ? 4000 : 3000, turned.orientation);
        REQUIRE(lens);
        CHECK_FALSE(lens->scaled());
        CHECK((lens->rayFromPixel(turned.pixel) - turned.ray).norm() < 1e-12);
        CHECK(distance(lens->pixelFromRay(turned.ray), turned.pixel) < 1e-8);
    }
}

TEST_CASE("A lens is used for its own proportions only", "[lens]") {
    CHECK_FALSE(PhotoLens::of(benchLens(), 4000, 2250));
    CHECK_FALSE(PhotoLens::of(benchLens(), 3000, 4000));
    CHECK(PhotoLens::of(benchLens(), 3000, 4000, 8));
    CHECK(PhotoLens::of(benchLens(), 1333, 1000));  // rounded to whole pixels
    // Calibrated from upright portrait photos: read as it stands.
    Lens portrait = benchLens();
    std::swap(portrait.imageWidthPx, portrait.imageHeightPx);
    std::swap(portrait.centreXPx, portrait.centreYPx);
    const auto lens = PhotoLens::of(portrait, 3000, 4000, 6);
    REQUIRE(lens);
    CHECK(lens->rayFromPixel({portrait.centreXPx, portrait.centreYPx}).norm() < 1e-12);
}

TEST_CASE("A distortion that folds the image is told from one that does not", "[lens]") {
    CHECK(coversImage(benchLens()));
    CHECK(coversImage(wideLens()));
    Lens folding = wideLens();
    folding.distortion = {-0.9, 0.0, 0.0, 0.0, 0.0};
    CHECK_FALSE(coversImage(folding));
}
