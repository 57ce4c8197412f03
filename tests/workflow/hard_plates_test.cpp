// SPDX-License-Identifier: GPL-3.0-or-later
// Dark plates, and things before the plate that are no animals: right, or refused, and never wrong in silence.
#include <catch2/catch.hpp>

#include <cmath>
#include <opencv2/imgcodecs.hpp>

#include "../render/box_file.h"
#include "../render/photograph.h"
#include "../render/spoil.h"
#include "../render/truth.h"
#include "../scratch_folder.h"
#include "ringrule/workflow/measure_photo.h"

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

PhotoReading read(const ScratchFolder& scratch, const render::Scene& scene, const cv::Mat3b& photo) {
    const auto file = scratch.path() / "hard_rendered.jpg";
    cv::imwrite(file.string(), photo, {cv::IMWRITE_JPEG_QUALITY, 85});
    const auto box = scratch.path() / "box.json";
    render::writeBox(scene.box, box);
    return measurePhoto(file, readBox(box));
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
