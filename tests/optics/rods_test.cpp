// SPDX-License-Identifier: GPL-3.0-or-later
// Rods of known length before the plate, seen through window and water by the synthetic photographer, which traces
// rays by Snell's law on its own and shares no code with what is tested.
#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <random>

#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>

#include "optics.h"
#include "photograph.h"
#include "random_box.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"

using namespace ringrule;
using namespace rods;

namespace {

// Relative error of a rod's length.
double errorOf(const Scale& scale, const TrueBox& box, const Rod& rod) {
    const render::Camera camera = box.camera();
    const cv::Point2d a = camera.pxFromPlate(rod.from, box.heightMm), b = camera.pxFromPlate(rod.to, box.heightMm);
    const double read = distance(scale.animalFromPixel({a.x, a.y}), scale.animalFromPixel({b.x, b.y}));
    return read / cv::norm(rod.to - rod.from) - 1.0;
}

// The same read off the plate by its homography alone: no lens, no water, no depth.
double plainErrorOf(const FoundPlate& plate, const TrueBox& box, const Rod& rod) {
    const render::Camera camera = box.camera();
    std::vector<cv::Point2d> seen, printed;
    for (const FoundMarker& marker : plate.markers) {
        const PlateMarker& m = box.stated.plate.markers[static_cast<std::size_t>(marker.id)];
        const double h = 0.5 * m.sideMm;
        for (std::size_t k = 0; k < 4; ++k) {
            seen.emplace_back(marker.cornersPx[k].x, marker.cornersPx[k].y);
            printed.emplace_back(m.centreMm.x + kTurns[k][0] * h, m.centreMm.y + kTurns[k][1] * h);
        }
    }
    std::vector<cv::Point2d> ends{camera.pxFromPlate(rod.from, box.heightMm), camera.pxFromPlate(rod.to, box.heightMm)};
    cv::perspectiveTransform(ends, ends, cv::findHomography(seen, printed));
    return cv::norm(ends[1] - ends[0]) / cv::norm(rod.to - rod.from) - 1.0;
}

struct Tally {
    double sum = 0.0;
    double worst = 0.0;
    int count = 0;
    int covered = 0;  // errors inside the scale's own 95 % interval
    int refused = 0;  // boxes
    void add(double error) {
        sum += std::abs(error);
        worst = std::max(worst, std::abs(error));
        ++count;
    }
    void add(double error, const Scale& scale) {
        add(error);
        if (std::abs(error) < 1.96 * std::hypot(scale.relativeSdRandom(), scale.relativeSdShared())) ++covered;
    }
    [[nodiscard]] double mean() const { return sum / count; }
};

constexpr int kRodsInABox = 10;
// What the detector of markers reaches on rendered photos is a few hundredths of a pixel.
constexpr double kCornerNoisePx = 0.05;

// Errors over boxes with what `told` leaves of the box file.
template <class Told>
Tally tallyOver(int boxes, Told told) {
    Tally tally;
    Random random(20310106);
    for (int i = 0; i < boxes; ++i) {
        TrueBox box = randomBox(random);
        const FoundPlate plate = seenPlate(box, kCornerNoisePx, random);
        told(box.stated);
        const auto scale = Scale::fromPlate(box.stated, plate, kWidthPx, kHeightPx);
        std::array<Rod, kRodsInABox> rods;
        std::generate(rods.begin(), rods.end(), [&random] { return randomRod(random); });
        if (!scale) {
            ++tally.refused;
            continue;
        }
        for (const Rod& rod : rods) tally.add(errorOf(scale.value(), box, rod), scale.value());
    }
    return tally;
}

// Errors of rods read off the plate's homography.
Tally plainTally(int boxes) {
    Tally tally;
    Random random(20310106);
    for (int i = 0; i < boxes; ++i) {
        const TrueBox box = randomBox(random);
        const FoundPlate plate = seenPlate(box, kCornerNoisePx, random);
        for (int k = 0; k < kRodsInABox; ++k) tally.add(plainErrorOf(plate, box, randomRod(random)));
    }
    return tally;
}

// The box as the photographer knows it; a small animal hangs in the middle of the plate, away from its markers.
render::Scene sceneOf(const TrueBox& box, std::uint64_t seed) {
    render::Scene scene;
    scene.seed = seed;
    scene.box.plateDictionary = box.stated.plate.dictionary;
    scene.box.cardDictionary = box.stated.cardDictionary;
    scene.box.plateMm = {kPlateWidthMm, kPlateHeightMm};
    for (const PlateMarker& m : box.stated.plate.markers)
        scene.box.markers.push_back({m.id, {m.centreMm.x, m.centreMm.y}, m.sideMm});
    scene.box.animalDistanceMm = box.heightMm;
    scene.box.media = box.media;
    scene.box.lens = box.lens;
    scene.animal.lengthMm = 60.0;
    scene.animal.trunkDepthMm = 3.0;
    scene.animal.trunkWidthMm = 2.6;
    scene.placement.distanceMm = box.heightMm;
    scene.camera = box.pose;
    scene.sensor.widthPx = kWidthPx;
    scene.sensor.heightPx = kHeightPx;
    return scene;
}

}  // namespace

TEST_CASE("Rods in 200 boxes: 0.1 % on average, 0.3 % at worst", "[rods]") {
    const Tally tally = tallyOver(200, [](const Box&) {});
    INFO("mean " << 100 * tally.mean() << " %, worst " << 100 * tally.worst << " %");
    CHECK(tally.refused == 0);
    CHECK(tally.count == 200 * kRodsInABox);
    CHECK(tally.mean() <= 0.001);
    CHECK(tally.worst <= 0.003);
}

TEST_CASE("Rods read off the plate alone err by per cents", "[rods]") {
    // Otherwise the test above would be none: the scenes need the corrections.
    const Tally tally = plainTally(60);
    CHECK(tally.mean() > 0.01);
    CHECK(tally.worst > 0.05);
}

TEST_CASE("Where lens and media are not known a scale is refused or its interval is honest", "[rods]") {
    const Tally tally = tallyOver(60, [](Box& box) {
        box.lens.reset();
        box.media.reset();
    });
    INFO(tally.covered << " of " << tally.count << ", refused boxes " << tally.refused);
    CHECK(tally.count >= 100);
    CHECK(tally.covered >= 0.9 * tally.count);
}

TEST_CASE("Rods measured by the plate found in rendered photos", "[.deep]") {
    Tally tally;
    double cornerRmsPx = 0.0;
    Random random(20310207);
    constexpr int kBoxes = 24;
    for (int i = 0; i < kBoxes; ++i) {
        const TrueBox box = randomBox(random);
        Photo photo;
        cv::cvtColor(render::photograph(sceneOf(box, static_cast<std::uint64_t>(i))), photo.grey, cv::COLOR_BGR2GRAY);
        const auto plate = findPlate(photo, box.stated);
        INFO("box " << i);
        REQUIRE(plate);
        CHECK(plate.value().markers.size() == 8);
        const auto scale = Scale::fromPlate(box.stated, plate.value(), kWidthPx, kHeightPx);
        REQUIRE(scale);
        cornerRmsPx += scale.value().cornerRmsPx() / kBoxes;
        for (int k = 0; k < kRodsInABox; ++k) tally.add(errorOf(scale.value(), box, randomRod(random)), scale.value());
    }
    std::cout << "rendered: corners " << cornerRmsPx << " px, mean " << 100 * tally.mean() << " %, worst "
              << 100 * tally.worst << " %, in interval " << tally.covered << " of " << tally.count << '\n';
    CHECK(tally.mean() <= 0.001);
    CHECK(tally.worst <= 0.003);
}

TEST_CASE("Error of rods by what is corrected, for the page on lenses", "[.table]") {
    const auto print = [](const char* what, const Tally& tally) {
        std::cout << std::left << std::setw(28) << what << std::fixed << std::setprecision(3) << "mean "
                  << 100 * tally.mean() << " %  worst " << 100 * tally.worst << " %  in interval "
                  << std::setprecision(1) << 100.0 * tally.covered / tally.count << " %  refused " << tally.refused
                  << " boxes\n";
    };
    print("lens and media", tallyOver(200, [](const Box&) {}));
    print("media, no lens", tallyOver(200, [](Box& box) { box.lens.reset(); }));
    print("lens, no media", tallyOver(200, [](Box& box) { box.media.reset(); }));
    print("neither", tallyOver(200, [](Box& box) {
              box.lens.reset();
              box.media.reset();
          }));
    print("read off the plate", plainTally(200));
}
