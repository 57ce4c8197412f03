// SPDX-License-Identifier: GPL-3.0-or-later
// Dark plates, and things before the plate that are no animals: right, or refused, and never wrong in silence.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <opencv2/imgcodecs.hpp>

#include "../render/box_file.h"
#include "../render/photograph.h"
#include "../render/scene_sampler.h"
#include "../render/spoil.h"
#include "../render/truth.h"
#include "../scratch_folder.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/measure_photo.h"
#include "workflow/session_rules.h"

using namespace ringrule;

namespace {

render::Scene pipefishScene(cv::Vec3d coatSrgb, bool darkPlate) {
    render::Scene scene;
    scene.box = render::benchBox();
    scene.animal.lengthMm = 110.0;
    scene.animal.trunkDepthMm = 4.0;
    scene.animal.trunkWidthMm = 3.6;
    scene.animal.coat.srgb = coatSrgb;
    scene.darkPlate = darkPlate;
    return scene;
}

render::Truth truthOf(const render::Scene& scene) {
    return render::truthOf(scene, render::bodyOf(scene.animal, scene.posture, scene.view));
}

/// A used plate: lines ruled across it, one along the animal's tail, a stain behind the trunk, and a smear as long as a
/// fish.
render::Scene soiled(render::Scene scene) {
    scene.stains = {{{84.0, 22.0}, {86.0, 98.0}, 0.4, 0.1},
                    {{112.0, 22.0}, {140.0, 98.0}, 0.4, 0.1},
                    {{78.0, 61.0}, {96.0, 57.0}, 14.0, 0.8},
                    {{40.0, 88.0}, {120.0, 91.0}, 3.0, 0.25}};
    return scene;
}

PhotoReading read(const ScratchFolder& scratch, const render::Scene& scene, const cv::Mat3b& photo,
                  const PhotoOptions& options = {}) {
    const auto file = scratch.path() / "hard_rendered.jpg";
    cv::imwrite(file.string(), photo, {cv::IMWRITE_JPEG_QUALITY, 85});
    const auto box = scratch.path() / "box.json";
    render::writeBox(scene.box, box);
    return measurePhoto(file, readBox(box), options);
}

}  // namespace

TEST_CASE("a pale pipefish before a dark plate is measured, its snout beyond the dark eye included") {
    const ScratchFolder scratch;
    const render::Scene scene = pipefishScene({210.0, 205.0, 190.0}, true);
    const PhotoReading reading = read(scratch, scene, render::photograph(scene));
    REQUIRE(reading.animals.size() == 1);
    const Measurement& m = reading.animals[0].measurement;
    REQUIRE(m.measured());
    const render::Truth truth = truthOf(scene);
    CHECK(m.standardLengthMm.value == Approx(truth.standardLengthMm).epsilon(0.006));  // as before a pale plate
    // The rim of a round body is darker and drawn in; the interval says so.
    CHECK(std::abs(m.trunkDepthMm.value - truth.trunkDepthMm) < m.trunkDepthMm.u95());
}

TEST_CASE("a nearly white pipefish before the white plate is measured by its colour, the spark in its eye no hole") {
    const ScratchFolder scratch;
    const render::Scene scene = pipefishScene({236.0, 223.0, 200.0}, false);
    const PhotoReading reading = read(scratch, scene, render::photograph(scene));
    REQUIRE(reading.animals.size() == 1);
    const Measurement& m = reading.animals[0].measurement;
    REQUIRE(m.measured());
    const render::Truth truth = truthOf(scene);
    CHECK(m.standardLengthMm.value == Approx(truth.standardLengthMm).epsilon(0.01));  // a tail's tip fades in colour
    // Colours are kept at half the photo's resolution; the interval says so, and a person looks before it counts.
    CHECK(std::abs(m.trunkDepthMm.value - truth.trunkDepthMm) < m.trunkDepthMm.u95());
    CHECK(std::find(m.remarks.begin(), m.remarks.end(), Remark::SeenByColour) != m.remarks.end());
    CHECK_FALSE(countsUnseen(m));
}

TEST_CASE("a pale seahorse before a dark plate is measured: eye and shaded belly belong to it, its fin does not") {
    const ScratchFolder scratch;
    render::SamplerOptions options;
    options.shape = render::Shape::Seahorse;
    options.shortestMm = options.longestMm = 90.0;
    options.closedTailShare = 0.0;
    render::Scene scene = render::sampleScene(11, render::benchBox(), options);
    scene.animal.coat.srgb = {205.0, 195.0, 175.0};
    scene.darkPlate = true;
    scene.card.shown = false;
    const PhotoReading reading = read(scratch, scene, render::photograph(scene));
    REQUIRE(reading.animals.size() == 1);
    const Measurement& m = reading.animals[0].measurement;
    REQUIRE(m.measured());
    const render::Truth truth = truthOf(scene);
    // Of 63 such scenes with an open or half curled tail the length was off by 0.26 % on average.
    CHECK(m.standardLengthMm.value == Approx(truth.standardLengthMm).epsilon(0.01));
    // The depth comes out 0.6 % low in the middle of 69 scenes; with the fin it would be 20 % high.
    CHECK(m.trunkDepthMm.value == Approx(truth.trunkDepthMm).epsilon(0.02));
    CHECK(reading.animals[0].outline.holesPx.empty());
}

TEST_CASE("an animal as dark as its plate is refused") {
    const ScratchFolder scratch;
    const render::Scene scene = pipefishScene({60.0, 56.0, 50.0}, true);
    const PhotoReading reading = read(scratch, scene, render::photograph(scene));
    for (const AnimalReading& animal : reading.animals) CHECK_FALSE(animal.measurement.measured());
    if (reading.animals.empty()) {
        REQUIRE(reading.refusal.has_value());
        CHECK(reading.refusal->reason == "cannot-separate");
    }
}

TEST_CASE("bubbles and droppings beside an animal are no animals") {
    const ScratchFolder scratch;
    const render::Scene scene = pipefishScene({90.0, 72.0, 45.0}, false);
    const render::Body body = render::bodyOf(scene.animal, scene.posture, scene.view);
    const render::Sight sight(scene, body);
    cv::Mat3f light = render::exposeScene(scene, body, sight);
    for (const auto& [x, y] : {std::pair{45.0, 35.0}, std::pair{80.0, 90.0}, std::pair{150.0, 38.0}}) {
        const cv::Point2d at = sight.camera().pxFromPlate({x, y}, 0.0);
        render::addDrop(light, {at, 12.0});
        render::addCover(light, {at + cv::Point2d(60.0, 8.0), {16.0, 9.0}, 0.4});
    }
    const PhotoReading reading = read(scratch, scene, render::develop(scene, light));
    REQUIRE(reading.animals.size() == 1);
    // Single animals are measured to 0.6 % at this size.
    CHECK(reading.animals[0].measurement.standardLengthMm.value ==
          Approx(truthOf(scene).standardLengthMm).epsilon(0.006));
}

TEST_CASE("with a photo of the empty box what the plate shows is no animal and no part of one") {
    const ScratchFolder scratch;
    const render::Scene scene = soiled(pipefishScene({90.0, 72.0, 45.0}, false));
    const cv::Mat3b photo = render::photograph(scene);
    // The box was taken down between the two photos: another place, another tilt, another light.
    render::Scene empty = scene;
    empty.withoutAnimal = true;
    empty.seed = 77;
    empty.camera.aimMm += cv::Point2d(1.5, -1.0);
    empty.camera.tiltXDeg = 1.5;
    empty.camera.rollDeg = -0.8;
    empty.light.level *= 0.9;
    empty.light.slope = {0.05, -0.04};
    cv::imwrite((scratch.path() / "empty_rendered.jpg").string(), render::photograph(empty), {cv::IMWRITE_JPEG_QUALITY, 85});
    render::writeBox(scene.box, scratch.path() / "box.json");
    PhotoOptions options;
    options.emptyBox = readEmptyBox(scratch.path() / "empty_rendered.jpg", readBox(scratch.path() / "box.json"));
    const render::Truth truth = truthOf(scene);

    const PhotoReading with = read(scratch, scene, photo, options);
    REQUIRE(with.animals.size() == 1);
    const Measurement& m = with.animals[0].measurement;
    REQUIRE(m.measured());
    CHECK(m.standardLengthMm.value == Approx(truth.standardLengthMm).epsilon(0.006));  // as before a clean plate
    CHECK(m.trunkDepthMm.value == Approx(truth.trunkDepthMm).epsilon(0.02));  // the stain's own rim stays behind the trunk

    const PhotoReading without = read(scratch, scene, photo);
    const bool wrong = without.animals.size() != 1 || !without.animals[0].measurement.measured() ||
                       std::abs(without.animals[0].measurement.standardLengthMm.value / truth.standardLengthMm - 1.0) > 0.02;
    CHECK(wrong);  // else this plate is no test
}

TEST_CASE("a photo that is not of the empty box's plate is told as such") {
    const ScratchFolder scratch;
    cv::imwrite((scratch.path() / "wall.jpg").string(), cv::Mat3b(600, 800, cv::Vec3b(128, 128, 128)));
    render::writeBox(render::benchBox(), scratch.path() / "box.json");
    CHECK_THROWS_WITH(readEmptyBox(scratch.path() / "wall.jpg", readBox(scratch.path() / "box.json")),
                      Catch::Contains("cannot serve as photo of the empty box"));
}

TEST_CASE("a bold numeral at the plate's edge is no animal, though no ruler's ticks stand beside it") {
    const ScratchFolder scratch;
    render::Scene scene = pipefishScene({90.0, 72.0, 45.0}, false);
    scene.stains = {{{151.0, 110.0}, {151.0, 113.0}, 1.1, 0.1}, {{153.0, 110.0}, {153.0, 113.0}, 1.1, 0.1},
                    {{151.0, 110.0}, {153.0, 110.0}, 1.1, 0.1}, {{151.0, 113.0}, {153.0, 113.0}, 1.1, 0.1}};
    CHECK(read(scratch, scene, render::photograph(scene)).animals.size() == 1);
}
