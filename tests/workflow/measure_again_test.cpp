// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <opencv2/imgcodecs.hpp>

#include "../records/sample_records.h"
#include "../render/box_file.h"
#include "../render/photograph.h"
#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/measure_again.h"
#include "ringrule/workflow/stored_correction.h"

using namespace ringrule;

namespace {

const std::filesystem::path kPhotos = std::filesystem::path(RINGRULE_SOURCE_DIR) / "sample_images/2031-01-06";

Box benchBox() {
    return readBox(std::filesystem::path(RINGRULE_SOURCE_DIR) / "calibration/bench-box.json");
}

/// The bench box under another name, its plate told a tenth too large.
Box wrongBox() {
    Box box = benchBox();
    box.name = "another box";
    box.plate.widthMm *= 1.1;
    box.plate.heightMm *= 1.1;
    for (PlateMarker& marker : box.plate.markers) {
        marker.sideMm *= 1.1;
        marker.centreMm = marker.centreMm * 1.1;
    }
    return box;
}

/// A session of one animal's two photos.
struct AgainHouse {
    ScratchFolder scratch;
    Store store = Store::create(scratch / "house");
    AnimalId animal;
    SessionId session;

    explicit AgainHouse(const Box& box, bool known = true) {
        if (known) animal = store.addAnimal(sample::animal("P1", 1));
        std::filesystem::create_directories(scratch / "photos");
        for (const char* name : {"P1-a_rendered.jpg", "P1-b_rendered.jpg"})
            std::filesystem::copy_file(kPhotos / name, scratch / "photos" / name);
        Session given;
        given.keeper = "K1";
        session = addSessionFolder(store, scratch / "photos", given, box, 2).session;
    }
    [[nodiscard]] std::vector<StoredMeasure> measures() const { return store.measuresOfSession(session); }
    AgainSummary again(const Box& box, bool correctedToo = false) {
        AgainOptions options;
        options.correctedToo = correctedToo;
        options.keeper = "K2";
        return measureSessionAgain(store, session, box, options);
    }
    /// What the app does when a keeper moves the end of the head a little and accepts.
    PixelPoint moveHeadEnd(const Box& box) {
        const StoredMeasure stored = measures().front();
        const PhotoReading reading = measurePhoto(kPhotos / "P1-a_rendered.jpg", box);
        const PixelPoint at = reading.animals.at(0).anatomy.landmarks.headEnd->atPx + PixelPoint{4.0, 0.0};
        const AnimalReading moved = withLandmarkMoved(reading, reading.animals[0], LandmarkName::HeadEnd, at);
        store.addMeasure(correctionOf(stored, moved, "K1"));
        return moved.anatomy.landmarks.headEnd->atPx;
    }
};

double lengthMm(const StoredMeasure& measure) {
    return measure.measurement.standardLengthMm.value;
}

}  // namespace

TEST_CASE("a session measured again has one reading a photo, and it is that of the right box") {
    AgainHouse house(wrongBox());
    const auto before = house.measures();
    const AgainSummary summary = house.again(benchBox());
    CHECK(summary.corrected == 2);
    CHECK(summary.session.measured == 2);
    CHECK(summary.session.troubles.empty());
    const auto after = house.measures();
    REQUIRE(after.size() == 2);
    for (std::size_t k = 0; k < 2; ++k) {
        CHECK(after[k].replaces == before[k].id);
        CHECK(after[k].boxName == "bench box");
        CHECK(after[k].keeper == "K2");
        CHECK(after[k].animal == house.animal);
        CHECK(after[k].accepted);
        // As a photo of the bench box reads when it is measured at once: the same code on the same pixels.
        const PhotoReading reading = measurePhoto(kPhotos / (k == 0 ? "P1-a_rendered.jpg" : "P1-b_rendered.jpg"),
                                                  benchBox(), {Shape::Pipefish, View::Side, {}});
        CHECK(lengthMm(after[k]) == Approx(reading.animals.at(0).measurement.standardLengthMm.value).epsilon(1e-9));
    }
    const auto histories = historiesFromStore(house.store);
    REQUIRE(histories[0].observations.size() == 1);
    CHECK(histories[0].observations[0].sidePhotos == 2);
    CHECK(house.store.sessions().at(0).boxName == "bench box");
    CHECK(house.again(benchBox()).same == 2);
}

TEST_CASE("what a person corrected stays unless it is told, and is then made again in the right scale") {
    AgainHouse house(wrongBox());
    const PixelPoint headEnd = house.moveHeadEnd(wrongBox());
    const StoredMeasure corrected = house.measures().front();
    const AgainSummary left = house.again(benchBox());
    CHECK(left.left == 1);
    CHECK(left.corrected == 1);
    CHECK(house.measures().front().id == corrected.id);
    const AgainSummary told = house.again(benchBox(), true);
    CHECK(told.left == 0);
    CHECK(told.corrected == 1);
    CHECK(told.same == 1);
    const StoredMeasure again = house.measures().front();
    CHECK(again.replaces == corrected.id);
    REQUIRE(again.landmarks.headEnd);
    CHECK(again.landmarks.headEnd->movedByHand);
    CHECK(distance(again.landmarks.headEnd->atPx, headEnd) < 0.01);
    // The plate was told a tenth too large; water and window bend that scale by some tenths of a per cent.
    CHECK(lengthMm(corrected) / lengthMm(again) == Approx(1.1).epsilon(0.01));
    CHECK(again.accepted);
}

TEST_CASE("what a person decided on a measure stays: whether it counts, whose it is") {
    AgainHouse house(wrongBox());
    const AnimalId other = house.store.addAnimal(sample::animal("P9", 9));
    const auto before = house.measures();
    house.store.setAccepted(before[0].id, false);
    house.store.assignAnimal(before[1].id, other);
    const AgainSummary summary = house.again(benchBox());
    const auto after = house.measures();
    CHECK_FALSE(after[0].accepted);
    CHECK(after[0].animal == house.animal);
    CHECK(after[1].accepted);
    CHECK(after[1].animal == other);
    CHECK(summary.given == 0);
    REQUIRE(summary.session.troubles.size() == 1);
    CHECK(summary.session.troubles[0].find("card 1 is P1's now") != std::string::npos);
}

TEST_CASE("an animal added since gets its measures, and nothing is stored twice") {
    AgainHouse house(benchBox(), false);
    const AnimalId added = house.store.addAnimal(sample::animal("P1", 1));
    const auto before = house.measures();
    const AgainSummary summary = house.again(benchBox());
    CHECK(summary.given == 2);
    const auto after = house.measures();
    REQUIRE(after.size() == 2);
    CHECK(after[0].animal == added);
    CHECK(after[1].animal == added);
    CHECK(historiesFromStore(house.store)[0].observations.at(0).sidePhotos == 2);
}

TEST_CASE("what a wrong box took for animals is seen no more, and comes back with that box") {
    // A plate told larger than its markers reach: what lies beside it is taken for animals.
    Box large = benchBox();
    large.name = "larger plate";
    large.plate.widthMm *= 1.05;
    large.plate.heightMm *= 1.05;
    AgainHouse house(large);
    const std::size_t many = house.measures().size();
    REQUIRE(many > 2);
    const AgainSummary summary = house.again(benchBox());
    CHECK(summary.session.troubles.empty());
    CHECK(summary.session.measured == 2);
    CHECK(summary.session.refused == 0);
    const auto after = house.measures();
    CHECK(after.size() == many);
    CHECK(static_cast<std::size_t>(std::count_if(after.begin(), after.end(), seenNoMore)) == many - 2);
    CHECK(std::count_if(after.begin(), after.end(), [](const StoredMeasure& m) { return m.accepted; }) == 2);
    CHECK(historiesFromStore(house.store)[0].observations.at(0).sidePhotos == 2);
    CHECK(house.again(benchBox()).corrected == 0);
    static_cast<void>(house.again(large));
    const auto back = house.measures();
    CHECK(back.size() == many);
    CHECK(std::none_of(back.begin(), back.end(), seenNoMore));
}

TEST_CASE("a session of a soiled plate is measured again with its photo of the empty box") {
    const ScratchFolder scratch;
    render::Scene scene;
    scene.box = render::benchBox();
    scene.animal.lengthMm = 110.0;
    scene.animal.trunkDepthMm = 4.0;
    scene.animal.trunkWidthMm = 3.6;
    scene.animal.coat.srgb = {90.0, 72.0, 45.0};
    scene.stains = {{{84.0, 22.0}, {86.0, 98.0}, 0.4, 0.1}, {{40.0, 88.0}, {120.0, 91.0}, 3.0, 0.25}};
    render::Scene empty = scene;
    empty.withoutAnimal = true;
    empty.seed = 77;
    std::filesystem::create_directories(scratch / "photos/empty");
    cv::imwrite(scratch / "photos/fish_rendered.jpg", render::photograph(scene), {cv::IMWRITE_JPEG_QUALITY, 85});
    cv::imwrite(scratch / "photos/empty/empty_rendered.jpg", render::photograph(empty), {cv::IMWRITE_JPEG_QUALITY, 85});
    render::writeBox(scene.box, scratch / "box.json");
    const Box box = readBox(scratch / "box.json");
    Store store = Store::create(scratch / "house");
    Session given;
    given.on = *parseDate("2031-01-06");
    const SessionId session = addSessionFolder(store, scratch / "photos", given, box, 1).session;
    CHECK(measureSessionAgain(store, session, box).same == 1);
    // A folder that is refused leaves no photo of the empty box to the next session of that number.
    CHECK_THROWS_WITH(addSessionFolder(store, scratch / "photos", given, box, 1), Catch::Contains("measure-again 1"));
    CHECK_FALSE(emptyBoxPhotoKept(store.folder(), SessionId{session.value + 1}));
    // Without that photo it is not measured at all, or the plate is no test.
    std::filesystem::remove(*emptyBoxPhotoKept(store.folder(), session));
    CHECK_THROWS_WITH(measureSessionAgain(store, session, box), Catch::Contains("nothing was changed"));
    CHECK(store.measuresOfSession(session).front().accepted);
}

TEST_CASE("an original that was lost or altered leaves its measures as they are") {
    AgainHouse house(wrongBox());
    const auto before = house.measures();
    const StoredPhoto first = house.store.photos(house.session).front();
    std::filesystem::remove(house.store.originalOf(first));
    std::filesystem::copy_file(kPhotos / "P2-a_rendered.jpg", house.store.originalOf(first));
    const AgainSummary summary = house.again(benchBox());
    CHECK(summary.corrected == 1);
    REQUIRE(summary.session.troubles.size() == 1);
    CHECK(summary.session.troubles[0].find("the original cannot be read") != std::string::npos);
    CHECK(house.measures().front().id == before.front().id);
}

TEST_CASE("a run that is stopped changes nothing") {
    AgainHouse house(wrongBox());
    const auto newest = house.store.newestChange();
    const auto stop = [](double fraction, std::string_view) { return fraction < 0.4; };
    CHECK_THROWS_AS(measureSessionAgain(house.store, house.session, benchBox(), {}, stop), Error);
    CHECK(house.store.newestChange() == newest);
    CHECK(house.measures().size() == 2);
}

TEST_CASE("stored measures find their animals nearest first, whatever their order") {
    const auto square = [](double x) {
        return std::vector<PixelPoint>{{x, 0.0}, {x + 2.0, 0.0}, {x + 2.0, 2.0}, {x, 2.0}};
    };
    StoredMeasure debris;
    debris.outlinePx = square(0.0);
    StoredMeasure animal;
    animal.outlinePx = square(100.0);
    animal.animalIndex = 1;
    PhotoReading reading;
    reading.animals.resize(1);
    reading.animals[0].outline.boundaryPx = square(98.0);
    const auto places = placesOf({debris, animal}, reading);
    CHECK_FALSE(places[0]);
    CHECK(places[1] == 0U);
}
