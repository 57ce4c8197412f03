// SPDX-License-Identifier: GPL-3.0-or-later
// The photographer checks itself: laws of its optics, closed forms, and the markers that an
// independent detector finds in its photos.
#include "box_file.h"
#include "coverage.h"
#include "demo_set.h"
#include "photograph.h"
#include "plate_drawing.h"
#include "scene_sampler.h"
#include "truth.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/aruco.hpp>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>

using namespace render;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

// A tube with half-round ends, evenly lit, on its own.
Body tube(double lengthMm, double halfMm) {
    Part part;
    part.stations = sweep({0.0, 0.0}, 0.0, 0.0, lengthMm, 2000, [](double) { return 0.0; });
    for (Station& station : part.stations) {
        station.backMm = station.bellyMm = halfMm;
    }
    roundEnds(part, halfMm, halfMm);
    Body body;
    body.parts.push_back(part);
    return body;
}

Scene plainScene() {
    SamplerOptions options;
    options.shape = Shape::Pipefish;
    options.shortestMm = 120.0;
    Scene scene = sampleScene(5, benchBox(), options);
    scene.light = Light{};
    scene.light.haze = 0.0;
    scene.sensor.blurPx = 0.6;
    scene.sensor.fullWell = 1e6;
    scene.sensor.readNoise = 0.0;
    return scene;
}

}  // namespace

TEST_CASE("distorting and undistorting are inverse to each other") {
    const Lens lens = *benchBox().lens;
    for (const double x : {-0.24, -0.1, 0.0, 0.13, 0.24}) {
        for (const double y : {-0.18, 0.0, 0.07, 0.18}) {
            const cv::Point2d back = undistort(lens, distort(lens, {x, y}));
            CHECK_THAT(back.x, WithinAbs(x, 1e-12));
            CHECK_THAT(back.y, WithinAbs(y, 1e-12));
        }
    }
}

TEST_CASE("distortion agrees with OpenCV's model") {
    const Lens lens = *benchBox().lens;
    const std::vector<cv::Point3d> points{{0.2, -0.15, 1.0}, {-0.23, 0.17, 1.0}, {0.01, 0.02, 1.0}};
    std::vector<cv::Point2d> seen;
    cv::projectPoints(points, cv::Vec3d(), cv::Vec3d(), cv::Matx33d::eye(),
                      std::vector<double>(lens.distortion.begin(), lens.distortion.end()), seen);
    for (std::size_t i = 0; i < points.size(); ++i) {
        CHECK(cv::norm(distort(lens, {points[i].x, points[i].y}) - seen[i]) < 1e-12);
    }
}

TEST_CASE("the lens bends the photo's corner by one to one and a half per cent") {
    const Lens lens = *benchBox().lens;
    const cv::Point2d corner(-lens.cxPx / lens.fxPx, -lens.cyPx / lens.fyPx);
    const double change = 1.0 - cv::norm(distort(lens, corner)) / cv::norm(corner);
    CHECK(change > 0.010);
    CHECK(change < 0.015);
}

TEST_CASE("refraction follows Snell's law and the index of sea water the published formula") {
    CHECK_THAT(refractedAngle(30.0 * kPi / 180.0, 1.0, 1.333) * 180.0 / kPi, WithinAbs(22.0301, 5e-5));
    CHECK_THAT(refractedAngle(30.0 * kPi / 180.0, 1.0, 1.4917) * 180.0 / kPi, WithinAbs(19.5840, 5e-5));
    CHECK_THAT(seaWaterIndex(35.0, 20.0), WithinAbs(1.339406, 1e-6));  // Quan & Fry 1995
    CHECK_THAT(seaWaterIndex(0.0, 25.0), WithinAbs(1.332514, 1e-6));
}

TEST_CASE("a ray through window and water arrives where Snell's angles lead it") {
    const Box box = benchBox();
    Lens plain = *box.lens;
    plain.distortion = {};
    const double water = 1.338;
    const Camera camera(plain, *box.media, water, {});
    const double angle = 12.0 * kPi / 180.0;
    const cv::Point2d px(plain.cxPx + plain.fxPx * std::tan(angle), plain.cyPx);
    const double inPane = refractedAngle(angle, 1.0, box.media->windowIndex);
    const double inWater = refractedAngle(angle, 1.0, water);
    const double expected = 420.0 * std::tan(angle) + 5.0 * std::tan(inPane) + (60.0 - 8.0) * std::tan(inWater);
    CHECK_THAT(camera.plateFromPx(px, 8.0).x - camera.centreMm()[0], WithinAbs(expected, 1e-9));
}

TEST_CASE("pixel to plate and plate to pixel are inverse to each other") {
    const Scene scene = sampleScene(GENERATE(1U, 2U, 3U), benchBox());
    const Lens lens = scaledLens(*scene.box.lens, 1920, 1440);
    const Camera camera(lens, *scene.box.media, waterIndexOf(scene), scene.camera);
    for (const double x : {0.0, 400.0, 1919.0}) {
        for (const double y : {0.0, 700.5, 1439.0}) {
            for (const double height : {0.0, 8.0, 20.0}) {
                const cv::Point2d back = camera.pxFromPlate(camera.plateFromPx({x, y}, height), height);
                CHECK(cv::norm(back - cv::Point2d(x, y)) < 1e-6);
            }
        }
    }
}

TEST_CASE("coverage of a polygon is its area") {
    const std::vector<cv::Point2d> triangle{{3.3, 2.2}, {41.7, 9.1}, {12.9, 33.6}};
    const cv::Point2d a = triangle[1] - triangle[0];
    const cv::Point2d b = triangle[2] - triangle[0];
    const Coverage coverage = coverageOf(triangle);
    CHECK_THAT(cv::sum(coverage.share)[0], WithinRel(0.5 * std::abs(a.cross(b)), 1e-6));
    double low = 0.0;
    double high = 0.0;
    cv::minMaxLoc(coverage.share, &low, &high);
    CHECK(low >= 0.0);
    CHECK(high <= 1.0);
}

TEST_CASE("the picture of a straight tube has the tube's area") {
    Scene scene = plainScene();
    scene.camera.tiltXDeg = scene.camera.tiltYDeg = scene.camera.rollDeg = 0.0;
    scene.placement.pitchDeg = 0.0;
    scene.placement.rotationDeg = GENERATE(0.0, 17.0, 90.0);
    const Body body = tube(60.0, 2.0);
    const Sight sight(scene, body);
    const Coverage seen = coverageOf(sight.pxFromBody(outlineOf(body.parts.front())));
    double area = 0.0;
    for (int row = 0; row < seen.share.rows; ++row) {
        for (int column = 0; column < seen.share.cols; ++column) {
            if (seen.share(row, column) > 0.0F) {
                const cv::Point2d px(column + seen.bounds.x, row + seen.bounds.y);
                const double height = scene.placement.distanceMm;
                const cv::Point2d right = sight.camera().plateFromPx(px + cv::Point2d(0.5, 0), height) -
                                          sight.camera().plateFromPx(px - cv::Point2d(0.5, 0), height);
                const cv::Point2d down = sight.camera().plateFromPx(px + cv::Point2d(0, 0.5), height) -
                                         sight.camera().plateFromPx(px - cv::Point2d(0, 0.5), height);
                area += seen.share(row, column) * std::abs(right.cross(down));
            }
        }
    }
    CHECK_THAT(area, WithinRel(56.0 * 4.0 + kPi * 4.0, 0.003));
}

TEST_CASE("the silhouette that is painted has the outline's area") {
    Scene scene = plainScene();
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    scene.light.shadow = 0.0;
    const cv::Mat3f with = exposeScene(scene, body, sight);
    Body hidden = body;
    hidden.fins.clear();
    hidden.eyes.clear();
    scene.animal.coat = {{0.0, 0.0, 0.0}, 0.0, 0.0, 0.0};
    const cv::Mat3f black = exposeScene(scene, hidden, sight);
    REQUIRE(with.size() == black.size());
    for (Part& part : hidden.parts) {  // away from the photo: the bare plate
        for (Station& station : part.stations) {
            station.spineMm += cv::Point2d(1000.0, 0.0);
        }
    }
    const cv::Mat3f bare = exposeScene(scene, hidden, sight);
    double area = 0.0;
    for (int y = 0; y < bare.rows; ++y) {
        for (int x = 0; x < bare.cols; ++x) {
            area += 1.0 - black(y, x)[1] / bare(y, x)[1];
        }
    }
    const std::vector<cv::Point2d> px = sight.pxFromBody(outlineOf(body.parts.front()));
    double exact = 0.0;
    for (std::size_t i = 0; i < px.size(); ++i) {
        exact += 0.5 * px[i].cross(px[(i + 1) % px.size()]);
    }
    // The gloss of a black animal keeps it from being quite black.
    CHECK_THAT(area, WithinRel(std::abs(exact), 0.03));
}

TEST_CASE("true lengths are those that were asked for") {
    const Scene scene = sampleScene(GENERATE(11U, 12U, 13U, 14U), benchBox());
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Truth truth = truthOf(scene, body);
    CHECK_THAT(truth.standardLengthMm, WithinRel(scene.animal.lengthMm, 1e-3));
    const Part& main = body.parts[body.mainPart];
    CHECK_THAT(greatestDepth(main, body.trunkStartMm, body.tailStartMm), WithinRel(scene.animal.trunkDepthMm, 1e-3));
    if (scene.animal.shape == Shape::Seahorse) {
        CHECK_THAT(cv::norm(*body.landmarks.snoutTip - *body.landmarks.headEnd), WithinAbs(truth.headLengthMm, 1e-3));
    }
    CHECK(truth.outlineBodyMm.size() > 390);
}

TEST_CASE("the perimeter of an ellipse") {
    CHECK_THAT(ellipsePerimeter(2.0, 2.0), WithinRel(2.0 * kPi, 1e-12));
    CHECK_THAT(ellipsePerimeter(10.0, 6.0), WithinRel(25.526998863398124, 1e-12));  // 4 a E(e), semi-axes 5 and 3
}

TEST_CASE("a hollow belly shows as a positive hollow, a full one as negative") {
    Scene scene = plainScene();
    scene.posture = {};
    scene.animal.bellyHollow = GENERATE(-0.08, 0.06);
    const Truth truth = truthOf(scene, bodyOf(scene.animal, scene.posture, scene.view));
    CHECK_THAT(*truth.bellyHollowStraightenedPercent, WithinAbs(100.0 * scene.animal.bellyHollow, 1.5));
    CHECK_THAT(*truth.bellyHollowPercent, WithinAbs(*truth.bellyHollowStraightenedPercent, 0.5));
}

TEST_CASE("the same scene gives the same photo, another seed another") {
    Scene scene = sampleScene(21, benchBox());
    scene.sensor.widthPx = 640;
    scene.sensor.heightPx = 480;
    const cv::Mat3b first = photograph(scene);
    CHECK(cv::norm(first, photograph(scene), cv::NORM_INF) == 0.0);
    scene.seed = 22;
    CHECK(cv::norm(first, photograph(scene), cv::NORM_INF) > 0.0);
}

TEST_CASE("a detector finds plate markers and card where they are") {
    const Scene scene = plainScene();
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    // In linear light: a tone curve moves the half-way level of a blurred edge into the dark.
    cv::Mat1f green;
    cv::extractChannel(exposeScene(scene, body, sight), green, 1);
    cv::GaussianBlur(green, green, {}, scene.sensor.blurPx);
    cv::Mat1b grey;
    green.convertTo(grey, CV_8U, 255.0 / 0.85);
    const auto parameters = cv::aruco::DetectorParameters::create();
    parameters->cornerRefinementMethod = cv::aruco::CORNER_REFINE_SUBPIX;
    std::vector<std::vector<cv::Point2f>> corners;
    std::vector<int> ids;
    const auto compare = [&](int id, const std::array<cv::Point2d, 4>& mm) {
        const auto found = std::find(ids.begin(), ids.end(), id);
        REQUIRE(found != ids.end());
        for (std::size_t i = 0; i < 4; ++i) {
            const cv::Point2d seen = corners[static_cast<std::size_t>(found - ids.begin())][i];
            CHECK(cv::norm(seen - sight.camera().pxFromPlate(mm[i], 0.0)) < 0.3);
        }
    };
    cv::aruco::detectMarkers(grey, cv::aruco::getPredefinedDictionary(cv::aruco::DICT_4X4_50), corners, ids,
                             parameters);
    for (const Marker& marker : scene.box.markers) {
        compare(marker.id, markerCornersMm(marker.centreMm, marker.sideMm));
    }
    cv::aruco::detectMarkers(grey, cv::aruco::getPredefinedDictionary(cv::aruco::DICT_5X5_1000), corners, ids,
                             parameters);
    compare(scene.animal.card, markerCornersMm(scene.card.centreMm, scene.card.markerMm, scene.card.rotationDeg));
}

TEST_CASE("the demo's story: P4 thins and recovers, P6 is only a little smaller") {
    const std::vector<Animal> animals = demoAnimals();
    const auto depthRatio = [&](std::size_t animal, std::size_t session) {
        const Animal now = animalAt(animals[animal], session);
        return now.trunkDepthMm / now.lengthMm;
    };
    CHECK(depthRatio(3, 5) < 0.83 * depthRatio(3, 0));
    CHECK(depthRatio(3, 8) > 0.94 * depthRatio(3, 0));
    CHECK_THAT(depthRatio(5, 8), WithinRel(depthRatio(5, 0), 0.05));
    CHECK_THAT(animalAt(animals[0], 0).lengthMm, WithinAbs(62.0, 5.0));
    CHECK_THAT(animalAt(animals[0], 8).lengthMm, WithinAbs(152.0, 6.0));
}
