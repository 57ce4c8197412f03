// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "drawn_box.h"
#include "ringrule/error.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"

using namespace ringrule;

namespace {

// Root mean square distance of the found corners from where the camera put them.
double cornerErrorPx(const FoundPlate& plate, const Box& box, const drawn::Camera& camera) {
    double squares = 0.0;
    int count = 0;
    for (const FoundMarker& marker : plate.markers) {
        const PlateMarker& printed = box.plate.markers.at(static_cast<std::size_t>(marker.id));
        const double half = 0.5 * printed.sideMm;
        const std::array<cv::Point2d, 4> offsets{cv::Point2d{-half, -half}, {half, -half}, {half, half}, {-half, half}};
        for (std::size_t k = 0; k < 4; ++k) {
            const cv::Point2d truth =
                camera.pxFromPlane(cv::Point2d(printed.centreMm.x, printed.centreMm.y) + offsets[k], 0.0);
            squares += std::pow(marker.cornersPx[k].x - truth.x, 2) + std::pow(marker.cornersPx[k].y - truth.y, 2);
            ++count;
        }
    }
    return std::sqrt(squares / count);
}

std::string reasonOf(const Outcome<FoundPlate>& outcome) {
    return outcome ? "" : outcome.refusal().reason;
}

}  // namespace

TEST_CASE("Every marker of a plain photo is found, its corners to hundredths of a pixel", "[plate]") {
    const Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    SECTION("square") {}
    SECTION("tilted and turned") {
        camera.turnRadians = {0.06, -0.05, 0.04};
    }
    SECTION("upside down") {
        camera.turnRadians = {0.0, 0.0, 3.14159265358979};
    }
    camera = drawn::aimedAt(camera, {100.0, 60.0});
    const Photo photo = drawn::photograph(camera, drawn::markersOf(box), {0.8, 2.0});
    const auto plate = findPlate(photo, box);
    REQUIRE(plate);
    CHECK(plate.value().markers.size() == 8);
    CHECK(plate.value().expectedMarkers == 8);
    CHECK(plate.value().cards.empty());
    // 106 px edges, 40 profiles each of 0.05 px: 0.03 px are expected of the noise, the rest is the drawing's sampling.
    CHECK(cornerErrorPx(plate.value(), box, camera) < 0.06);
    // A homography leaves out that water draws the plate's rim outward: some tenths of a pixel in this box.
    CHECK(plate.value().cornerRmsPx < 0.35);
}

TEST_CASE("Markers hidden by an animal are left out, the others hold the plate", "[plate]") {
    const Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::benchCamera(box);
    auto markers = drawn::markersOf(box);
    SECTION("three hidden") {
        markers.erase(markers.begin() + 1, markers.begin() + 4);
        const auto plate = findPlate(drawn::photograph(camera, markers), box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 5);
        CHECK(cornerErrorPx(plate.value(), box, camera) < 0.06);
    }
    SECTION("two left, far apart") {
        const auto plate = findPlate(drawn::photograph(camera, {markers[0], markers[7]}), box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 2);
    }
    SECTION("two left, side by side") {
        CHECK(reasonOf(findPlate(drawn::photograph(camera, {markers[0], markers[4]}), box)) != "no-plate");
        CHECK(reasonOf(findPlate(drawn::photograph(camera, {markers[0], markers[1]}), box)) == "too-few-markers");
    }
    SECTION("one left") {
        CHECK(reasonOf(findPlate(drawn::photograph(camera, {markers[5]}), box)) == "too-few-markers");
    }
    SECTION("none left") {
        CHECK(reasonOf(findPlate(drawn::photograph(camera, {}), box)) == "no-plate");
    }
}

TEST_CASE("A marker that is not where the plate says is not believed", "[plate]") {
    const Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::benchCamera(box);
    auto markers = drawn::markersOf(box);
    SECTION("one misplaced") {
        markers[2].centreMm.x -= 14.0;
        const auto plate = findPlate(drawn::photograph(camera, markers), box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 7);
        CHECK(cornerErrorPx(plate.value(), box, camera) < 0.06);
    }
    SECTION("all those of another plate") {
        for (auto& marker : markers) marker.id = (marker.id * 3 + 1) % 8;
        CHECK(reasonOf(findPlate(drawn::photograph(camera, markers), box)) == "plate-mismatch");
    }
    SECTION("ids that the plate has not") {
        for (auto& marker : markers) marker.id += 20;
        CHECK(reasonOf(findPlate(drawn::photograph(camera, markers), box)) == "plate-mismatch");
    }
    SECTION("another dictionary") {
        for (auto& marker : markers) {
            marker.dictionary = cv::aruco::DICT_6X6_250;
            marker.id += 90;
        }
        const auto plate = findPlate(drawn::photograph(camera, markers), box);
        REQUIRE_FALSE(plate);
        CHECK(plate.refusal().reason == "plate-other-markers");
        CHECK_THAT(plate.refusal().sentence, Catch::Contains("DICT_6X6_100") || Catch::Contains("DICT_6X6_250"));
        CHECK_THAT(plate.refusal().sentence, Catch::Contains("DICT_4X4_50"));
    }
}

TEST_CASE("A mirrored photo is refused as such", "[plate]") {
    const Box box = drawn::benchBox();
    Photo photo = drawn::photograph(drawn::benchCamera(box), drawn::markersOf(box));
    SECTION("left and right") {
        cv::flip(photo.grey, photo.grey, 1);
    }
    SECTION("top and bottom") {
        cv::flip(photo.grey, photo.grey, 0);
    }
    CHECK(reasonOf(findPlate(photo, box)) == "plate-mirrored");
}

TEST_CASE("Two plates in one photo are refused as such", "[plate]") {
    const Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    camera.airMm = 900.0;  // room for both
    camera = drawn::aimedAt(camera, {100.0, 130.0});
    Box told = box;
    told.media->cameraToWindowMm = 900.0;
    auto markers = drawn::markersOf(box);
    const std::size_t first = markers.size();
    SECTION("both whole") {
        for (std::size_t i = 0; i < first; ++i) markers.push_back(markers[i]);
    }
    SECTION("two markers of the second") {
        markers.push_back(markers[1]);
        markers.push_back(markers[6]);
    }
    for (std::size_t i = first; i < markers.size(); ++i) markers[i].centreMm += cv::Point2d(4.0, 140.0);
    CHECK(reasonOf(findPlate(drawn::photograph(camera, markers), told)) == "two-plates");
}

TEST_CASE("A plate upside down is measured by and named", "[plate]") {
    const Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    const auto remarked = [&](double turn) {
        camera.turnRadians = {0.0, 0.0, turn};
        const Photo photo = drawn::photograph(drawn::aimedAt(camera, {100.0, 60.0}), drawn::markersOf(box), {0.8, 2.0});
        const auto plate = findPlate(photo, box);
        REQUIRE(plate);
        const auto scale = Scale::fromPlate(box, plate.value(), photo.grey.cols, photo.grey.rows);
        REQUIRE(scale);
        const auto& remarks = scale.value().remarks();
        return std::find(remarks.begin(), remarks.end(), Remark::PlateUpsideDown) != remarks.end();
    };
    CHECK(remarked(3.0));
    CHECK_FALSE(remarked(0.1));
}

TEST_CASE("A marker that glare or a drop breaks is found where the others put it", "[plate]") {
    const Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::benchCamera(box);
    Photo photo = drawn::photograph(camera, drawn::markersOf(box), {0.8, 2.0});
    const cv::Point2d at = camera.pxFromPlane({12.0, 12.0}, 0.0);
    const double side = cv::norm(camera.pxFromPlane({18.0, 12.0}, 0.0) - camera.pxFromPlane({6.0, 12.0}, 0.0));
    SECTION("a drop on its border") {
        cv::circle(photo.grey, cv::Point(at + cv::Point2d(0.45 * side, 0.0)), static_cast<int>(0.12 * side), 235, -1);
        const auto plate = findPlate(photo, box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 8);
        CHECK(cornerErrorPx(plate.value(), box, camera) < 0.3);
    }
    SECTION("another marker in its place is not taken for it") {
        auto markers = drawn::markersOf(box);
        markers[0].id = 33;
        const auto plate = findPlate(drawn::photograph(camera, markers, {0.8, 2.0}), box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 7);
    }
    SECTION("half covered it is not guessed") {
        cv::rectangle(photo.grey, cv::Rect2d(at.x - 0.7 * side, at.y - 0.7 * side, 1.4 * side, 0.75 * side), 60, -1);
        const auto plate = findPlate(photo, box);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 7);
    }
}

TEST_CASE("Cards are told from the plate and sorted from left to right", "[plate]") {
    const Box box = drawn::benchBox();
    auto markers = drawn::markersOf(box);
    markers.push_back({cv::aruco::DICT_5X5_1000, 417, {150.0, 40.0}, 10.0});
    markers.push_back({cv::aruco::DICT_5X5_1000, 3, {40.0, 80.0}, 8.0});
    const auto plate = findPlate(drawn::photograph(drawn::benchCamera(box), markers, {0.8, 2.0}), box);
    REQUIRE(plate);
    REQUIRE(plate.value().cards.size() == 2);
    CHECK(plate.value().cards[0].id == 3);
    CHECK(plate.value().cards[1].id == 417);
    CHECK(plate.value().markers.size() == 8);
}

TEST_CASE("A plate printed at 97 % is found: nothing in one photo tells it", "[plate]") {
    const Box box = drawn::benchBox();
    const auto plate = findPlate(drawn::photograph(drawn::benchCamera(box), drawn::markersOf(box, 0.97)), box);
    REQUIRE(plate);
    CHECK(plate.value().markers.size() == 8);
}

TEST_CASE("The plate's corners follow the lens", "[plate]") {
    const Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    camera.turnRadians = {0.03, 0.02, 0.05};
    const auto plate = findPlate(drawn::photograph(camera, drawn::markersOf(box)), box);
    REQUIRE(plate);
    const std::array<cv::Point2d, 4> cornersMm{cv::Point2d{0, 0}, {200, 0}, {200, 120}, {0, 120}};
    for (std::size_t k = 0; k < 4; ++k) {
        const cv::Point2d truth = camera.pxFromPlane(cornersMm[k], 0.0);
        // The homography leaves out refraction's own pincushion: some tenths of a pixel beyond the outermost markers.
        CHECK(std::hypot(plate.value().cornersPx[k].x - truth.x, plate.value().cornersPx[k].y - truth.y) < 0.6);
    }
}

TEST_CASE("Small, soft and noisy photos still give the plate", "[plate]") {
    Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    camera.lens.imageWidthPx = 800;
    camera.lens.imageHeightPx = 600;
    camera.lens.focalXPx = camera.lens.focalYPx = 1700.0;
    camera.lens.centreXPx = 399.0;
    camera.lens.centreYPx = 300.5;
    box.lens = camera.lens;
    const auto plate = findPlate(drawn::photograph(camera, drawn::markersOf(box), {1.0, 4.0}), box);
    REQUIRE(plate);
    CHECK(plate.value().markers.size() == 8);
    CHECK(cornerErrorPx(plate.value(), box, camera) < 0.15);
}

TEST_CASE("A box without a dictionary is an error, not a guess", "[plate]") {
    Photo photo;
    photo.grey = cv::Mat1b(300, 400, std::uint8_t{128});
    CHECK_THROWS_AS(findPlate(photo, Box{}), Error);
}
