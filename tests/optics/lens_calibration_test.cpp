// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/lens_calibration.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include <nlohmann/json.hpp>
#include <opencv2/imgproc.hpp>

#include "../scratch_folder.h"
#include "drawn_box.h"
#include "ringrule/error.h"
#include "ringrule/imaging/upright.h"
#include "ringrule/optics/box_writer.h"
#include "ringrule/optics/scale.h"

using namespace ringrule;

namespace {

constexpr int kWidthPx = 2000, kHeightPx = 1500;
const Lens kTruth{2100.0, 2104.0, 1012.0, 741.0, {-0.22, 0.11, 0.0008, -0.0006, 0.0}, kWidthPx, kHeightPx};

struct Held {
    double tiltX = 0.0, tiltY = 0.0, roll = 0.0;  // radians
    cv::Vec3d middle{0.0, 0.0, 500.0};            // of the board before the camera, mm
};

// A board of 10 × 7 corners, 20 mm apart, as a pinhole with that lens records it: the textbook's formula.
BoardView viewOf(const Lens& lens, const Held& held, double noisePx, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    std::normal_distribution<double> noise(0.0, noisePx);
    drawn::Camera turn;
    turn.turnRadians = {held.tiltX, held.tiltY, held.roll};
    const cv::Matx33d rotation = turn.rotation();
    BoardView view;
    view.path = "view" + std::to_string(seed) + ".jpg";
    view.widthPx = lens.imageWidthPx;
    view.heightPx = lens.imageHeightPx;
    view.cameraMake = "Example";
    view.cameraModel = "One";
    view.takenAt = "2031-01-0" + std::to_string(1 + seed % 5) + "T10:00:00";
    view.blurPx = 0.8;
    for (int row = 0; row < 7; ++row)
        for (int column = 0; column < 10; ++column) {
            const PlatePoint at{20.0 * column, 20.0 * row};
            const cv::Vec3d p = rotation * cv::Vec3d(at.x - 90.0, at.y - 60.0, 0.0) + held.middle;
            const double x = p[0] / p[2], y = p[1] / p[2], r2 = x * x + y * y;
            const auto& k = lens.distortion;
            const double radial = 1.0 + r2 * (k[0] + r2 * (k[1] + r2 * k[4]));
            const double xd = x * radial + 2.0 * k[2] * x * y + k[3] * (r2 + 2.0 * x * x);
            const double yd = y * radial + k[2] * (r2 + 2.0 * y * y) + 2.0 * k[3] * x * y;
            view.printedMm.push_back(at);
            view.seenPx.push_back({lens.focalXPx * xd + lens.centreXPx + noise(random),
                                   lens.focalYPx * yd + lens.centreYPx + noise(random)});
        }
    return view;
}

// Twelve photos as the guide asks: tilted every way, the board brought into the corners.
std::vector<BoardView> goodViews(const Lens& lens, double noisePx, std::uint64_t seed) {
    std::vector<BoardView> views;
    for (int i = 0; i < 12; ++i) {
        const double way = 2.0 * std::numbers::pi * i / 12.0, tilt = i % 2 == 0 ? 0.5 : 0.35;
        const double aside = i % 3 == 0 ? 0.0 : 1.0;
        views.push_back(
            viewOf(lens,
                   {tilt * std::cos(way),
                    tilt * std::sin(way),
                    0.1 * i,
                    {aside * 120.0 * std::cos(1.7 * i), aside * 90.0 * std::sin(1.7 * i), 480.0 + 10.0 * i}},
                   noisePx, 100 * seed + static_cast<std::uint64_t>(i)));
    }
    return views;
}

LensPhotoState stateOf(const LensReport& report, std::size_t i) {
    return report.photos.at(i).state;
}

std::string reasonOf(const LensReport& report) {
    return report.refusal ? report.refusal->reason : "";
}

}  // namespace

TEST_CASE("a lens without noise comes back whole", "[lens-calibration]") {
    const LensReport report = calibrateLens(goodViews(kTruth, 0.0, 1));
    REQUIRE(report.fitted);
    const Lens& lens = report.fitted->lens;
    // OpenCV takes points in single precision: 2000 px to 1e-4 px.
    CHECK(lens.focalXPx == Approx(kTruth.focalXPx).epsilon(1e-5));
    CHECK(lens.focalYPx == Approx(kTruth.focalYPx).epsilon(1e-5));
    CHECK(lens.centreXPx == Approx(kTruth.centreXPx).epsilon(1e-4));
    CHECK(lens.centreYPx == Approx(kTruth.centreYPx).epsilon(1e-4));
    for (std::size_t i = 0; i < 4; ++i) CHECK(lens.distortion[i] == Approx(kTruth.distortion[i]).epsilon(0.01));
    CHECK(report.fitted->rmsPx < 1e-3);
    CHECK(report.fitted->origin.cameraModel == "One");
    CHECK(report.fitted->origin.calibratedOn == "2031-01-05");
    CHECK(report.coverage > 0.7);
}

TEST_CASE("standard errors are as large as the errors", "[lens-calibration]") {
    double focal = 0.0, centre = 0.0, rms = 0.0;
    constexpr int kRuns = 30;
    for (std::uint64_t seed = 1; seed <= kRuns; ++seed) {
        const LensReport report = calibrateLens(goodViews(kTruth, 0.2, seed));
        REQUIRE(report.fitted);
        const FittedLens& fitted = *report.fitted;
        focal += std::pow((fitted.lens.focalXPx - kTruth.focalXPx) / fitted.focalSdPx, 2) / kRuns;
        centre += std::pow((fitted.lens.centreXPx - kTruth.centreXPx) / fitted.centreSdPx, 2) / kRuns;
        rms += fitted.rmsPx / kRuns;
    }
    // Mean square of 30 standard normal values: 0.46 to 1.8 in 99 of 100 cases; the larger of two directions' standard
    // errors stands for both, which lowers it a little.
    CHECK(focal > 0.46);
    CHECK(focal < 1.8);
    CHECK(centre > 0.4);
    CHECK(centre < 1.8);
    CHECK(rms == Approx(0.2 * std::sqrt(2.0)).epsilon(0.03));  // both directions
}

TEST_CASE("k3 and tangential terms are kept only when the photos hold them", "[lens-calibration]") {
    Lens plain = kTruth;
    plain.distortion = {-0.22, 0.11, 0.0, 0.0, 0.0};
    int k3 = 0, tangential = 0;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const LensReport report = calibrateLens(goodViews(plain, 0.2, seed));
        REQUIRE(report.fitted);
        k3 += report.fitted->thirdRadialFixed ? 1 : 0;
        tangential += report.fitted->tangentialFixed ? 1 : 0;
        if (report.fitted->thirdRadialFixed) CHECK(report.fitted->lens.distortion[4] == 0.0);
    }
    CHECK(k3 >= 7);          // 95 % expected
    CHECK(tangential >= 6);  // 90 % expected
    Lens strong = kTruth;
    strong.distortion = {-0.3, 0.15, 0.004, -0.003, -0.4};
    const LensReport report = calibrateLens(goodViews(strong, 0.05, 3));
    REQUIRE(report.fitted);
    CHECK_FALSE(report.fitted->thirdRadialFixed);
    CHECK_FALSE(report.fitted->tangentialFixed);
    CHECK(report.fitted->lens.distortion[4] == Approx(-0.4).epsilon(0.3));
}

TEST_CASE("a photo that contradicts the others is left out and told", "[lens-calibration]") {
    auto views = goodViews(kTruth, 0.1, 5);
    std::mt19937_64 random(9);
    std::normal_distribution<double> noise(0.0, 3.0);
    for (PixelPoint& p : views[4].seenPx) p = p + PixelPoint{noise(random), noise(random)};
    views[7].blurPx = 4.0;
    const LensReport report = calibrateLens(views);
    REQUIRE(report.fitted);
    CHECK(stateOf(report, 4) == LensPhotoState::Outlier);
    CHECK(report.photos[4].advice.find("retake") != std::string::npos);
    CHECK(report.photos[4].rmsPx > 2.0);
    CHECK(stateOf(report, 7) == LensPhotoState::Blurred);
    CHECK(report.fitted->lens.focalXPx == Approx(kTruth.focalXPx).epsilon(0.002));
    CHECK(std::count_if(report.photos.begin(), report.photos.end(),
                        [](const LensPhoto& p) { return p.state == LensPhotoState::Used; }) == 10);
}

TEST_CASE("photos of another camera or size are set aside", "[lens-calibration]") {
    auto views = goodViews(kTruth, 0.1, 6);
    views[0].cameraModel = "Two";
    std::swap(views[3].widthPx, views[3].heightPx);
    views[5].seenPx.clear();
    views[5].printedMm.clear();
    views[5].notFound = "no board";
    const LensReport report = calibrateLens(views);
    REQUIRE(report.fitted);
    CHECK(stateOf(report, 0) == LensPhotoState::OtherCamera);
    CHECK(stateOf(report, 3) == LensPhotoState::OtherSize);
    CHECK(stateOf(report, 5) == LensPhotoState::BoardNotFound);
    CHECK(report.photos[5].advice == "no board");
}

TEST_CASE("too little to tell a lens is refused with its reason", "[lens-calibration]") {
    auto views = goodViews(kTruth, 0.1, 7);
    SECTION("four photos") {
        views.resize(4);
        CHECK(reasonOf(calibrateLens(views)) == "too-few-lens-photos");
    }
    SECTION("no photo") {
        CHECK(reasonOf(calibrateLens({})) == "too-few-lens-photos");
    }
    SECTION("the same pose again and again") {
        std::vector<BoardView> same;
        for (std::uint64_t i = 0; i < 8; ++i)
            same.push_back(viewOf(kTruth, {0.3, 0.1 + 0.002 * static_cast<double>(i), 0.0, {0, 0, 300.0}}, 0.1, i));
        const LensReport report = calibrateLens(same);
        CHECK(reasonOf(report) == "too-few-lens-photos");
        CHECK(stateOf(report, 0) == LensPhotoState::Used);
        CHECK(stateOf(report, 7) == LensPhotoState::TooSimilar);
    }
    SECTION("only the middle of the frame") {
        std::vector<BoardView> middle;
        for (std::uint64_t i = 0; i < 10; ++i)
            middle.push_back(viewOf(kTruth,
                                    {0.5 * std::cos(0.6 * static_cast<double>(i)),
                                     0.5 * std::sin(0.6 * static_cast<double>(i)),
                                     0.0,
                                     {0, 0, 900.0}},
                                    0.1, i));
        const LensReport report = calibrateLens(middle);
        CHECK(reasonOf(report) == "poor-coverage");
        CHECK(report.coverage < 0.5);
    }
    SECTION("all square on") {
        std::vector<BoardView> square;
        for (std::uint64_t i = 0; i < 10; ++i) {
            const double t = static_cast<double>(i);
            square.push_back(viewOf(
                kTruth,
                {0.02 * std::cos(t), 0.02 * std::sin(t), 0.2 * t, {100.0 * std::cos(t), 80.0 * std::sin(t), 450.0}},
                0.1, i));
        }
        CHECK(reasonOf(calibrateLens(square)) == "poor-angles");
    }
    SECTION("corners of no lens") {
        std::mt19937_64 random(3);
        std::normal_distribution<double> noise(0.0, 30.0);
        for (BoardView& view : views)
            for (PixelPoint& p : view.seenPx) p = p + PixelPoint{noise(random), noise(random)};
        const LensReport report = calibrateLens(views);
        CHECK_FALSE(report.fitted);
        CHECK((reasonOf(report) == "lens-not-determined" || reasonOf(report) == "poor-angles"));
    }
}

TEST_CASE("a photo turned by EXIF shows the corners where the sensor has them", "[lens-calibration]") {
    cv::Mat1b stored(600, 800, static_cast<unsigned char>(200));
    for (int row = 0; row < 6; ++row)
        for (int column = 0; column < 7; ++column)
            if ((row + column) % 2 == 0)
                cv::rectangle(stored, cv::Rect(150 + 60 * column, 80 + 60 * row, 60, 60), cv::Scalar(30), cv::FILLED);
    cv::GaussianBlur(stored, stored, {}, 1.0);
    for (int orientation = 1; orientation <= 8; ++orientation) {
        Photo photo;
        photo.exifOrientation = orientation;
        photo.grey = turnedUpright(stored, orientation).clone();
        BoardView view = viewChessboard(photo, {6, 5, 20.0});
        INFO("orientation " << orientation << " " << view.notFound);
        REQUIRE(view.seenPx.size() == 30);
        CHECK(view.widthPx == 800);
        CHECK(view.heightPx == 600);
        for (const PixelPoint p : view.seenPx) {
            // Squares begin at whole pixels: corners lie half a pixel before them.
            const double x = (p.x + 0.5 - 210.0) / 60.0, y = (p.y + 0.5 - 140.0) / 60.0;
            CHECK(std::abs(x - std::round(x)) * 60.0 < 0.05);
            CHECK(std::abs(y - std::round(y)) * 60.0 < 0.05);
            CHECK((x > -0.5 && x < 5.5 && y > -0.5 && y < 4.5));
        }
        CHECK(view.blurPx == Approx(1.0).margin(0.25));
    }
}

TEST_CASE("the box's own plate in air tells the lens too", "[lens-calibration]") {
    Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    camera.lens.focalXPx = camera.lens.focalYPx = 2200.0;
    camera.media.reset();
    std::vector<BoardView> first;
    std::vector<Photo> photos;
    for (int i = 0; i < 9; ++i) {
        const double t = 0.7 * i;
        camera.airMm = 260.0 + 8.0 * i;
        camera.turnRadians = {0.45 * std::cos(t), 0.45 * std::sin(t), 0.2 * i};
        drawn::Picture picture;
        picture.noise = 1.0;
        picture.seed = static_cast<std::uint64_t>(i + 1);
        const cv::Point2d aim(100.0 + 25.0 * std::cos(2.0 * i), 60.0 + 20.0 * std::sin(2.0 * i));
        photos.push_back(drawn::photograph(drawn::aimedAt(camera, aim), drawn::markersOf(box), picture));
        first.push_back(viewPlate(photos.back(), box));
    }
    const LensReport rough = calibrateLens(first);
    INFO(reasonOf(rough) << " coverage " << rough.coverage);
    REQUIRE(rough.fitted);
    std::vector<BoardView> second;
    for (const Photo& photo : photos) second.push_back(viewPlate(photo, box, rough.fitted->lens));
    const LensReport report = calibrateLens(second);
    REQUIRE(report.fitted);
    INFO("focal " << report.fitted->lens.focalXPx << " sd " << report.fitted->focalSdPx << " RMS "
                  << report.fitted->rmsPx);
    CHECK(report.fitted->lens.focalXPx == Approx(2200.0).epsilon(0.002));
    CHECK(report.fitted->lens.focalYPx == Approx(2200.0).epsilon(0.002));
    CHECK(report.fitted->rmsPx < 0.15);
    CHECK(report.fitted->lens.distortion[0] == Approx(-0.15).margin(0.02));
}

TEST_CASE("a lens goes into a box file and leaves all else there", "[lens-calibration]") {
    const ScratchFolder folder;
    auto document = nlohmann::ordered_json::parse(boxText(drawn::benchBox()));
    document["made_by"] = "K1";
    document["lens"]["note"] = "kept";
    document["lens"]["camera_make"] = "Old";
    const auto path = folder.write("box.json", document.dump());
    const LensOrigin origin{"2031-02-03", "", "One"};
    writeLens(kTruth, origin, path);
    const Box box = readBox(path);
    REQUIRE(box.lens);
    CHECK(box.lens->focalXPx == kTruth.focalXPx);
    CHECK(box.lens->distortion == kTruth.distortion);
    CHECK(box.lensOrigin.calibratedOn == "2031-02-03");
    CHECK(box.lensOrigin.cameraMake.empty());
    CHECK(box.lensOrigin.cameraModel == "One");
    CHECK(parseBox(boxText(box)).lensOrigin.cameraModel == "One");
    const auto after = nlohmann::json::parse(contentOf(path));
    CHECK(after["made_by"] == "K1");
    CHECK(after["lens"]["note"] == "kept");
    CHECK(after["media"] == nlohmann::json(document["media"]));

    Lens folding = kTruth;
    folding.distortion[0] = -3.0;
    const std::string before = contentOf(path);
    CHECK_THROWS_AS(writeLens(folding, origin, path), Error);
    CHECK(contentOf(path) == before);
    CHECK(filesIn(folder.path()) == 1);
}

TEST_CASE("a photo of another camera than the lens photos' gets a remark", "[lens-calibration]") {
    Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::benchCamera(box);
    Photo photo = drawn::photograph(drawn::aimedAt(camera, {100.0, 60.0}), drawn::markersOf(box));
    const auto remarked = [&] {
        const auto plate = findPlate(photo, box);
        REQUIRE(plate);
        const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
        REQUIRE(scale);
        const auto& remarks = scale.value().remarks();
        return std::find(remarks.begin(), remarks.end(), Remark::LensOtherCamera) != remarks.end();
    };
    photo.cameraModel = "Two";
    CHECK_FALSE(remarked());  // the box file does not say
    box.lensOrigin = {"2031-01-05", "Example", "One"};
    CHECK(remarked());
    photo.cameraModel = "One";
    CHECK_FALSE(remarked());
    photo.cameraModel.clear();
    CHECK_FALSE(remarked());
}

TEST_CASE("For a photo of another focal length the lens is not used", "[lens-calibration]") {
    Box box = drawn::benchBox();
    box.lens->distortion = {};  // else the corners' scatter alone would refuse the photo
    box.lensOrigin = {"2031-01-05", "Example", "One", 50.0};
    Photo photo = drawn::photograph(drawn::aimedAt(drawn::benchCamera(box), {100.0, 60.0}), drawn::markersOf(box));
    const auto scaleAt = [&](std::optional<double> focalMm) {
        photo.focalLengthMm = focalMm;
        const auto plate = findPlate(photo, box);
        REQUIRE(plate);
        const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
        REQUIRE(scale);
        return scale.value();
    };
    const auto remarked = [](const Scale& scale) {
        const auto& remarks = scale.remarks();
        return std::find(remarks.begin(), remarks.end(), Remark::LensOtherSetting) != remarks.end();
    };
    const Scale same = scaleAt(50.3), silent = scaleAt({}), zoomed = scaleAt(55.0);
    CHECK_FALSE(remarked(same));
    CHECK_FALSE(remarked(silent));
    CHECK(remarked(zoomed));
    CHECK(same.tiltDegrees());
    CHECK_FALSE(zoomed.tiltDegrees());
    CHECK(zoomed.relativeSdShared() > same.relativeSdShared());
}
