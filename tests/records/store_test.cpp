// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/error.h"
#include "ringrule/records/measure_columns.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

void checkSame(const Estimate& a, const Estimate& b) {
    REQUIRE(a.known() == b.known());
    if (!a.known()) return;
    CHECK(a.value == b.value);
    CHECK(a.sdRandom == b.sdRandom);
    CHECK(a.sdShared == b.sdShared);
}

void checkSame(const std::optional<Landmark>& a, const std::optional<Landmark>& b) {
    REQUIRE(a.has_value() == b.has_value());
    if (!a) return;
    CHECK(a->atPx == b->atPx);
    CHECK(a->sdAlongPx == b->sdAlongPx);
    CHECK(a->movedByHand == b->movedByHand);
}

std::vector<Change> changesOf(const Store& store, const std::string& what) {
    auto changes = store.changes();
    std::erase_if(changes, [&](const Change& change) { return change.what != what; });
    return changes;
}

}  // namespace

TEST_CASE("a new collection is a folder with a database, photos and calibration") {
    const ScratchFolder scratch;
    const Store store = newCollection(scratch / "house");
    CHECK(std::filesystem::is_regular_file(scratch / "house/collection.sqlite"));
    CHECK(std::filesystem::is_directory(scratch / "house/photos"));
    CHECK(std::filesystem::is_directory(scratch / "house/calibration"));
    CHECK(store.animals().empty());
}

TEST_CASE("animals, tanks, diets and spells come back as they were told, also after reopening", "[either]") {
    const ScratchFolder scratch;
    AnimalId animalId;
    {
        Store store = newCollection(scratch / "house");
        animalId = store.addAnimal(sample::animal());
        Animal bare;
        bare.code = "W1";
        bare.species = "Hippocampus reidi";
        bare.shape = "seahorse";
        store.addAnimal(bare);
        const TankId tank = store.addTank({{}, "B3", "Bay 3"});
        const DietId diet = store.addDiet({{}, "D1", "live only", {"brine shrimp, live", "mysids \"small\""}, 2.5});
        store.addStay({animalId, tank, Date{2030y / 12 / 1}, std::nullopt});
        store.addDietSpell({animalId, diet, Date{2030y / 12 / 2}, Date{2031y / 5 / 1}});
        store.addState({animalId, "carrying-eggs", Date{2031y / 6 / 1}, Date{2031y / 6 / 20}});
        store.addNote({animalId, Date{2031y / 2 / 3}, "left the frozen food — twice"});
    }
    const Store store = Store::open(scratch / "house");
    const auto animals = store.animals();
    REQUIRE(animals.size() == 2);
    CHECK(animals[0].id == animalId);
    CHECK(animals[0].code == "P4");
    CHECK(animals[0].name == "Wisp");
    CHECK(animals[0].species == "Syngnathus typhle");
    CHECK(animals[0].shape == "pipefish");
    CHECK(animals[0].sex == Sex::Female);
    CHECK(animals[0].hatchedOn == Date{2030y / 11 / 15});
    CHECK(animals[0].hatchedExactly);
    CHECK(animals[0].hatchedSdDays == 1.5);
    CHECK(animals[0].arrivedOn == Date{2030y / 12 / 1});
    CHECK(animals[0].card == 14);
    CHECK(animals[1].sex == Sex::Unknown);
    CHECK_FALSE(animals[1].hatchedOn.has_value());
    CHECK_FALSE(animals[1].card.has_value());
    REQUIRE(store.diets().size() == 1);
    CHECK(store.diets()[0].foods == std::vector<std::string>{"brine shrimp, live", "mysids \"small\""});
    CHECK(store.diets()[0].feedsPerDay == 2.5);
    CHECK(store.tanks().at(0).name == "Bay 3");
    CHECK_FALSE(store.stays().at(0).to.has_value());
    CHECK(store.dietSpells().at(0).to == Date{2031y / 5 / 1});
    CHECK(store.states().at(0).state == "carrying-eggs");
    CHECK(store.notes(animalId).at(0).text == "left the frozen food — twice");
}

TEST_CASE("a measure comes back with every column, landmark and line", "[either]") {
    const ScratchFolder scratch;
    const auto photoFile = scratch.write("a.JPG", "pixels");
    Store store = newCollection(scratch / "house");
    const AnimalId animal = store.addAnimal(sample::animal());
    const SessionId session = store.addSession(sample::session());
    StoredPhoto photo;
    photo.session = session;
    photo.takenAt = "2031-01-06T10:22:31";
    photo.widthPx = 4000;
    photo.heightPx = 3000;
    photo.view = View::Above;
    const PhotoId photoId = store.addPhoto(photo, photoFile);
    const StoredMeasure given = sample::stored(photoId, animal);
    const MeasureId id = store.addMeasure(given);

    const auto photos = store.photos(session);
    REQUIRE(photos.size() == 1);
    CHECK(photos[0].originalName == "a.JPG");
    CHECK(photos[0].takenAt == "2031-01-06T10:22:31");
    CHECK(photos[0].widthPx == 4000);
    CHECK(photos[0].view == View::Above);
    // SHA-256 of "pixels", from coreutils' sha256sum.
    CHECK(photos[0].contentHash == "6ec9c2b0eb14010746c8bce8939303b382344b296206612eb8a907a37b2b2f37");

    const auto measures = store.measuresOfAnimal(animal);
    REQUIRE(measures.size() == 1);
    const StoredMeasure& got = measures[0];
    CHECK(got.id == id);
    CHECK(got.photo == photoId);
    CHECK(got.animal == animal);
    CHECK(got.animalIndex == 2);
    CHECK(got.card == 14);
    CHECK(got.boxName == "bench box");
    CHECK(got.softwareVersion == "0.1.0");
    CHECK(got.keeper == "K1");
    CHECK_FALSE(got.replaces.has_value());
    CHECK(got.accepted);
    CHECK(got.measurement.shape == Shape::Pipefish);
    CHECK(got.measurement.protocol == "dawson-1985");
    CHECK(got.measurement.remarks == given.measurement.remarks);
    CHECK_FALSE(got.measurement.refusal.has_value());
    for (const MeasureColumn& column : kMeasureColumns) {
        INFO(column.column);
        checkSame(got.measurement.*column.member, given.measurement.*column.member);
    }
    for (const LandmarkColumn& column : kLandmarkColumns) {
        INFO(column.key);
        checkSame(got.landmarks.*column.member, given.landmarks.*column.member);
    }
    CHECK(got.landmarks.ventralOnLeft);
    CHECK(got.outlinePx == given.outlinePx);
    CHECK(got.spinePx == given.spinePx);
    CHECK(store.measuresOfPhoto(photoId).size() == 1);
    CHECK(store.measuresOfSession(session).size() == 1);
}

TEST_CASE("a refusal is kept with its reason", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    StoredMeasure measure;
    measure.photo = store.addPhoto(photo, scratch.write("a.jpg", "x"));
    measure.measurement.refusal = Refusal{"tail-closed", "The tail closes on itself."};
    store.addMeasure(measure);
    const auto got = store.measuresOfPhoto(measure.photo).at(0);
    CHECK(got.measurement.refusal == measure.measurement.refusal);
    CHECK_FALSE(got.animal.has_value());
    CHECK_FALSE(got.measurement.standardLengthMm.known());
}

TEST_CASE("a correction adds a row, hides the one it replaces, and is logged", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    const AnimalId animal = store.addAnimal(sample::animal());
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    const PhotoId photoId = store.addPhoto(photo, scratch.write("a.jpg", "x"));
    const MeasureId first = store.addMeasure(sample::stored(photoId, animal, 100.0));
    StoredMeasure corrected = sample::stored(photoId, animal, 102.5);
    corrected.replaces = first;
    corrected.keeper = "K2";
    const MeasureId second = store.addMeasure(corrected);
    const auto current = store.measuresOfPhoto(photoId);
    REQUIRE(current.size() == 1);
    CHECK(current[0].id == second);
    CHECK(current[0].landmarks.snoutTip.has_value());
    const auto changes = changesOf(store, "corrected");
    REQUIRE(changes.size() == 1);
    CHECK(changes[0].who == "K2");
    CHECK(changes[0].what == "corrected");
    CHECK(changes[0].before == "standard length 100.00 mm");
    CHECK(changes[0].after == "measure 2, standard length 102.50 mm");
    CHECK(parseDate(changes[0].at).has_value());

    // One row can be replaced once only: two corrections of the same row would both be "current".
    CHECK_THROWS_AS(store.addMeasure(corrected), Error);
    CHECK(store.measuresOfPhoto(photoId).size() == 1);
}

TEST_CASE("accepting, assigning and describing anew are logged with who, before and after", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    const AnimalId animal = store.addAnimal(sample::animal());
    StoredPhoto photo;
    photo.session = store.addSession(sample::session());
    const PhotoId photoId = store.addPhoto(photo, scratch.write("a.jpg", "x"));
    const MeasureId id = store.addMeasure(sample::stored(photoId, std::nullopt));
    store.setAccepted(id, false);
    store.setAccepted(id, false);  // no change, no line
    store.setKeeper("K2");
    store.assignAnimal(id, animal);
    Animal described = store.animals().at(0);
    described.sex = Sex::Male;
    store.updateAnimal(described);
    CHECK_FALSE(store.measuresOfAnimal(animal).at(0).accepted);
    CHECK(store.animals().at(0).sex == Sex::Male);
    auto changes = store.changes();
    std::erase_if(changes, [](const Change& change) { return change.what == "added"; });
    REQUIRE(changes.size() == 3);
    CHECK(changes[0].what == "accepted");
    CHECK(changes[0].who == "K1");
    CHECK(changes[0].before == "yes");
    CHECK(changes[0].after == "no");
    CHECK(changes[1].what == "assigned");
    CHECK(changes[1].who == "K2");
    CHECK(changes[1].before.empty());
    CHECK(changes[1].after == "P4");
    CHECK(changes[2].subject == "animal P4");
    CHECK(changes[2].before.find("female") != std::string::npos);
}

TEST_CASE("what must be one of a kind is refused in the keeper's words", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    store.addAnimal(sample::animal());
    CHECK_THROWS_WITH(store.addAnimal(sample::animal()), "animal \"P4\" is already in this collection");
    CHECK_THROWS_WITH(store.addAnimal(sample::animal("P5")), "card 14 already belongs to animal \"P4\"");
    store.addTank({{}, "B3", "Bay 3"});
    CHECK_THROWS_WITH(store.addTank({{}, "B3", "other"}), "tank \"B3\" is already in this collection");
    CHECK(store.animals().size() == 1);
}

TEST_CASE("foreign keys are enforced", "[either]") {
    const ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    CHECK_THROWS_AS(store.addStay({AnimalId{7}, TankId{8}, Date{}, std::nullopt}), Error);
    CHECK_THROWS_AS(store.addMeasure(sample::stored(PhotoId{99}, std::nullopt)), Error);
    CHECK_THROWS_AS(store.setAccepted(MeasureId{99}, true), Error);
}

TEST_CASE("two stores may be open at once, each on its own connection", "[either]") {
    const ScratchFolder scratch;
    Store first = newCollection(scratch / "house");
    const Store second = Store::open(scratch / "house");
    first.addAnimal(sample::animal());
    CHECK(second.animals().size() == 1);
}
