// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/outline/edit_outline.h"
#include "ringrule/workflow/measure_photo.h"

using namespace ringrule;

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

const Box& bench() {
    static const Box box = readBox(kSource / "calibration/bench-box.json");
    return box;
}

const PhotoReading& reading() {
    static const PhotoReading read = measurePhoto(kSource / "sample_images/2031-01-06/P1-a_rendered.jpg", bench());
    return read;
}

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

}  // namespace

TEST_CASE("a reading says what the photo is") {
    CHECK(reading().boxName == "bench box");
    CHECK(reading().takenAt == "2031-01-06T08:32:08");
    CHECK(reading().widthPx > reading().heightPx);
    CHECK(reading().contentHash.size() == 64);
    REQUIRE(reading().animals.size() == 1);
    CHECK(reading().animals[0].card == 1);
    CHECK_FALSE(reading().refusal.has_value());
}

TEST_CASE("what is known of a card's animal is believed about its shape") {
    PhotoOptions options;
    options.shapeByCard = {{1, Shape::Pipefish}, {2, Shape::Seahorse}};
    const auto told = measurePhoto(reading().path, bench(), options);
    CHECK(told.animals.at(0).measurement.shape == Shape::Pipefish);
    CHECK_FALSE(has(told.animals.at(0).measurement.remarks, Remark::ShapeGuessed));
}

TEST_CASE("each measurement repeats its photo's remarks, once") {
    const auto& remarks = reading().animals.at(0).measurement.remarks;
    for (const Remark remark : reading().remarks) CHECK(std::count(remarks.begin(), remarks.end(), remark) == 1);
}

TEST_CASE("moving the tail's end along the body moves the length by as much, and says who moved it") {
    const AnimalReading& animal = reading().animals.at(0);
    const auto& spine = animal.anatomy.midline.spinePx;
    // A point of the midline itself, so that nothing is gained by stepping aside.
    const PixelPoint target = spine.at(spine.size() - spine.size() / 10);
    const PixelPoint before = animal.anatomy.landmarks.tailEnd->atPx;
    const double movedMm = distance(before, target) * reading().scale->mmPerPx(target);
    const AnimalReading moved = withLandmarkMoved(reading(), animal, LandmarkName::TailEnd, target);
    // The tail is nearly straight over that tenth of the body: 2 % for its bend and for the step of the midline.
    CHECK(animal.measurement.standardLengthMm.value - moved.measurement.standardLengthMm.value ==
          Approx(movedMm).epsilon(0.02));
    CHECK(moved.measurement.headLengthMm.value == Approx(animal.measurement.headLengthMm.value).margin(1e-9));
    CHECK(has(moved.measurement.remarks, Remark::MovedByHand));
    CHECK_FALSE(has(animal.measurement.remarks, Remark::MovedByHand));
    for (const Remark remark : reading().remarks) CHECK(has(moved.measurement.remarks, remark));
    CHECK(moved.card == animal.card);
    // Back again: the same length as before.
    const AnimalReading back = withLandmarkMoved(reading(), moved, LandmarkName::TailEnd, before);
    CHECK(back.measurement.standardLengthMm.value ==
          Approx(animal.measurement.standardLengthMm.value).epsilon(0.001));  // a step of the midline
}

TEST_CASE("an outline corrected by hand is measured anew, with what was moved by hand before") {
    const Photo photo = loadPhoto(reading().path);
    const AnimalReading& animal = reading().animals.at(0);
    const AnimalReading same = withOutline(photo, reading(), animal, animal.outline);
    CHECK(same.measurement.standardLengthMm.value == animal.measurement.standardLengthMm.value);
    CHECK(same.measurement.remarks == animal.measurement.remarks);
    const PixelPoint headEnd = animal.anatomy.midline.spinePx.at(animal.anatomy.midline.spinePx.size() / 3);
    const AnimalReading moved = withLandmarkMoved(reading(), animal, LandmarkName::HeadEnd, headEnd);
    const auto pulledOut = pulled(animal.outline, animal.outline.boundaryPx.front(),
                                  animal.outline.boundaryPx.front() + PixelPoint{0.5, 0.5}, 12.0);
    REQUIRE(pulledOut.ok());
    const AnimalReading edited = withOutline(photo, reading(), moved, pulledOut.value());
    CHECK(has(edited.measurement.remarks, Remark::OutlinedByHand));
    CHECK(has(edited.measurement.remarks, Remark::MovedByHand));
    CHECK(edited.card == animal.card);
    REQUIRE(edited.anatomy.landmarks.headEnd.has_value());
    CHECK(distance(edited.anatomy.landmarks.headEnd->atPx, headEnd) < 1.5);  // a step of the midline
    // Half a pixel at one place moves the length by far less than its own interval.
    CHECK(edited.measurement.standardLengthMm.value ==
          Approx(animal.measurement.standardLengthMm.value).margin(animal.measurement.standardLengthMm.u95()));
}

TEST_CASE("an animal cut in two is two animals that the card cannot tell apart; taken out, there is none") {
    const Photo photo = loadPhoto(reading().path);
    const AnimalReading& animal = reading().animals.at(0);
    const PixelPoint middle = animal.anatomy.midline.spinePx.at(animal.anatomy.midline.spinePx.size() / 2);
    const auto pieces = cutAlong(animal.outline, std::vector{middle - PixelPoint{0, 200}, middle + PixelPoint{0, 200}});
    REQUIRE(pieces.ok());
    const PhotoReading cut = withOutlines(photo, reading(), {0}, pieces.value());
    REQUIRE(cut.animals.size() == 2);
    for (const AnimalReading& part : cut.animals) {
        CHECK_FALSE(part.card.has_value());
        CHECK(has(part.measurement.remarks, Remark::SeveralAnimals));
        CHECK(has(part.measurement.remarks, Remark::OutlinedByHand));
    }
    CHECK(cut.animals[1].index == 1);
    const PhotoReading whole = withOutlines(photo, cut, {0, 1}, {animal.outline});
    REQUIRE(whole.animals.size() == 1);
    CHECK(whole.animals[0].card == animal.card);
    CHECK(whole.animals[0].measurement.remarks == animal.measurement.remarks);
    CHECK(whole.animals[0].measurement.standardLengthMm.value == animal.measurement.standardLengthMm.value);
    CHECK(withOutlines(photo, reading(), {0}, {}).animals.empty());
}

TEST_CASE("a file that is no photo is an error") {
    const ScratchFolder scratch;
    try {
        static_cast<void>(measurePhoto(scratch.write("a.jpg", "text"), bench()));
        FAIL("was read");
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadPhoto);
    }
}
