// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/records/record_search.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

struct House {
    ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    AnimalId animal = store.addAnimal(sample::animal());

    [[nodiscard]] std::int64_t lastChange() const { return store.changes().back().id; }
    MeasureId addMeasure(double lengthMm) {
        StoredPhoto photo;
        photo.session = store.addSession(sample::session());
        return store.addMeasure(sample::stored(store.addPhoto(photo, scratch.write("a.jpg", "x")), animal, lengthMm));
    }
    [[nodiscard]] double lengthMm() const {
        return store.measuresOfAnimal(animal).at(0).measurement.standardLengthMm.value;
    }
};

RecordValues feeding(const std::string& outcome = "refused") {
    return {{"animal", "P4"}, {"on_day", "2031-03-01"}, {"food", "frozen mysids"}, {"outcome", outcome}};
}

}  // namespace

TEST_CASE("a record is added, changed and removed, and each is taken back", "[either]") {
    House house;
    house.store.setKeeper("K1");
    const std::int64_t id = house.store.addRecord("feeding", feeding());
    CHECK(house.store.feedingNotes().at(0).outcome == "refused");
    house.store.changeRecord("feeding", id, 1, {{"outcome", "taken"}, {"note", "late"}});
    CHECK(house.store.record("feeding", id)->text("outcome") == "taken");
    CHECK(house.store.changes().back().before == "outcome: refused");
    CHECK(house.store.changes().back().after == "note: late; outcome: taken");
    const std::int64_t change = house.lastChange();
    house.store.removeRecord("feeding", id, 2);
    CHECK(house.store.feedingNotes().empty());

    house.store.undo(house.lastChange());  // the removal
    CHECK(house.store.record("feeding", id)->text("note") == "late");
    house.store.undo(change);
    CHECK(house.store.record("feeding", id)->text("outcome") == "refused");
    CHECK(house.store.record("feeding", id)->text("note").empty());
    CHECK(house.store.changes().back().undoes == change);
    CHECK(house.store.newestChange() == house.lastChange());
    house.store.undo(house.lastChange());  // the undo itself
    CHECK(house.store.record("feeding", id)->text("outcome") == "taken");
}

TEST_CASE("an undo is refused when the record was changed again since", "[either]") {
    House house;
    const std::int64_t id = house.store.addRecord("feeding", feeding());
    const std::int64_t added = house.lastChange();
    house.store.changeRecord("feeding", id, 1, {{"outcome", "taken"}});
    const std::int64_t first = house.lastChange();
    house.store.changeRecord("feeding", id, 2, {{"outcome", "offered"}});
    CHECK_THROWS_WITH(house.store.undo(first), "feeding 1 was changed again since; take the later change back first");
    CHECK_THROWS_AS(house.store.undo(added), Error);
    house.store.changeRecord("feeding", id, 3, {{"note", "another field"}});
    house.store.undo(house.lastChange());
    CHECK(house.store.record("feeding", id)->text("outcome") == "offered");
    CHECK_THROWS_AS(house.store.undo(4711), Error);
}

TEST_CASE("a number is not given to a second record, so an undo cannot meet another one's row", "[either]") {
    House house;
    const std::int64_t id = house.store.addRecord("feeding", feeding());
    house.store.removeRecord("feeding", id, 1);
    const std::int64_t removal = house.lastChange();
    CHECK(house.store.addRecord("feeding", feeding("taken")) == id + 1);
    house.store.undo(removal);
    CHECK(house.store.feedingNotes().size() == 2);
}

TEST_CASE("an animal that others refer to is not removed", "[either]") {
    House house;
    house.store.addRecord("feeding", feeding());
    CHECK_THROWS_AS(house.store.removeRecord("animal", house.animal.value, 1), Error);
    CHECK(house.store.animals().size() == 1);
}

TEST_CASE("two keepers describe one animal: the second is told who and what, and nothing is overwritten", "[either]") {
    House house;
    Store other = Store::open(house.scratch / "house");
    house.store.setKeeper("K1");
    other.setKeeper("K2");
    Animal first = house.store.animals().at(0);
    Animal second = other.animals().at(0);
    first.sex = Sex::Male;
    second.name = "Whisper";
    house.store.updateAnimal(first);
    try {
        other.updateAnimal(second);
        FAIL("the second change went through");
    } catch (const ChangedMeanwhile& told) {
        const std::string words = told.what();
        CHECK(words.find("animal P4 was changed by K1") != std::string::npos);
        CHECK(words.find("female") != std::string::npos);
    }
    CHECK(other.animals().at(0).sex == Sex::Male);
    CHECK(other.animals().at(0).name == "Wisp");
    second = other.animals().at(0);
    second.name = "Whisper";
    other.updateAnimal(second);
    CHECK(house.store.animals().at(0).name == "Whisper");
    CHECK(house.store.animals().at(0).sex == Sex::Male);
    CHECK_THROWS_AS(house.store.changeRecord("animal", first.id.value, first.version, {{"name", "X"}}),
                    ChangedMeanwhile);
    CHECK_THROWS_AS(house.store.removeRecord("animal", first.id.value, first.version), ChangedMeanwhile);
}

TEST_CASE("two keepers correct one measure: the second is told", "[either]") {
    House house;
    const MeasureId first = house.addMeasure(100.0);
    Store other = Store::open(house.scratch / "house");
    StoredMeasure one = house.store.measuresOfAnimal(house.animal).at(0);
    StoredMeasure two = other.measuresOfAnimal(house.animal).at(0);
    one.replaces = first;
    two.replaces = first;
    house.store.addMeasure(one);
    CHECK_THROWS_AS(other.addMeasure(two), ChangedMeanwhile);
    CHECK(other.measuresOfAnimal(house.animal).size() == 1);
}

TEST_CASE("a correction taken back leaves first reading and correction in place and the first counts again",
          "[either]") {
    House house;
    const MeasureId first = house.addMeasure(100.0);
    StoredMeasure corrected = house.store.measuresOfAnimal(house.animal).at(0);
    corrected.replaces = first;
    corrected.measurement.standardLengthMm.value = 102.5;
    house.store.addMeasure(corrected);
    CHECK(house.lengthMm() == 102.5);
    house.store.undo(house.lastChange());
    CHECK(house.lengthMm() == 100.0);
    CHECK(house.store.measuresOfAnimal(house.animal).at(0).outlinePx == corrected.outlinePx);
    CHECK(house.store.records("measure").size() == 3);
    CHECK_THROWS_AS(house.store.undo(house.lastChange() - 1), Error);  // taken back already
}

TEST_CASE("readings are never removed nor their numbers changed", "[either]") {
    House house;
    const MeasureId id = house.addMeasure(100.0);
    CHECK_THROWS_AS(house.store.removeRecord("measure", id.value, 1), Error);
    CHECK_THROWS_AS(house.store.changeRecord("measure", id.value, 1, {{"standard_length_mm", "1"}}), Error);
    CHECK_THROWS_AS(house.store.addRecord("measure", {}), Error);
    house.store.changeRecord("measure", id.value, 1, {{"animal", ""}});
    CHECK(house.store.measuresOfAnimal(house.animal).empty());
    house.store.undo(house.lastChange());
    CHECK(house.store.measuresOfAnimal(house.animal).size() == 1);
}

TEST_CASE("what is no value of its field is refused by name", "[either]") {
    House house;
    auto bad = feeding();
    bad["on_day"] = "1.3.2031";
    CHECK_THROWS_WITH(house.store.addRecord("feeding", bad),
                      "\"on_day\" must be a day such as 2031-01-06, not \"1.3.2031\"");
    bad = feeding("eaten");
    CHECK_THROWS_WITH(house.store.addRecord("feeding", bad),
                      "\"outcome\" must be one of: offered taken refused; not \"eaten\"");
    bad = feeding();
    bad["tank"] = "B3";
    CHECK_THROWS_WITH(house.store.addRecord("feeding", bad), "say one of \"animal\", \"tank\", and only one");
    bad = feeding();
    bad["animal"] = "P9";
    CHECK_THROWS_WITH(house.store.addRecord("feeding", bad), "there is no animal \"P9\" in this collection");
    bad = feeding();
    bad["colour"] = "red";
    CHECK_THROWS_AS(house.store.addRecord("feeding", bad), Error);
    CHECK_THROWS_AS(house.store.addRecord("meal", {}), Error);
    CHECK_THROWS_AS(
        house.store.addRecord(
            "state", {{"animal", "P4"}, {"state", "brooding"}, {"from_day", "2031-05-16"}, {"to_day", "2031-05-01"}}),
        Error);
    CHECK(house.store.feedingNotes().empty());
}

TEST_CASE("a note is on one animal, tank, brood, session or photo", "[either]") {
    House house;
    house.addMeasure(100.0);
    house.store.addTank({{}, "B3", "Bay 3"});
    house.store.addRecord("brood", {{"code", "R2"}});
    const std::vector<std::pair<std::string, std::string>> subjects{
        {"animal", "P4"}, {"tank", "B3"}, {"brood", "R2"}, {"session", "1"}, {"photo", "1"}};
    std::int64_t last = 0;
    for (const auto& [kind, which] : subjects)
        last = house.store.addRecord(
            "note", {{kind, which}, {"on_day", "2031-02-01"}, {"text", "on a " + kind}, {"keeper", "K1"}});
    for (const auto& [kind, which] : subjects) {
        std::vector<std::string> found;
        eachRecordWith(house.store, "note", {{kind, which}},
                       [&](const Record& note) { found.push_back(note.text("text") + " by " + note.text("keeper")); });
        CHECK(found == std::vector<std::string>{"on a " + kind + " by K1"});
    }
    CHECK(house.store.notes(house.animal).size() == 1);
    house.store.changeRecord("note", last, 1, {{"photo", ""}, {"tank", "B3"}});
    house.store.undo(house.lastChange());
    CHECK(house.store.record("note", last)->text("photo") == "1");
    house.store.removeRecord("note", last, 3);
    house.store.undo(house.lastChange());
    CHECK(house.store.record("note", last)->text("text") == "on a photo");
    const RecordValues bare{{"on_day", "2031-02-01"}, {"text", "about what?"}};
    CHECK_THROWS_WITH(house.store.addRecord("note", bare),
                      "say one of \"animal\", \"tank\", \"brood\", \"session\", \"photo\"");
    RecordValues both = bare;
    both["tank"] = "B3";
    both["photo"] = "1";
    CHECK_THROWS_AS(house.store.addRecord("note", both), Error);
    both["tank"].clear();
    both["photo"] = "77";
    CHECK_THROWS_AS(house.store.addRecord("note", both), Error);
    CHECK(house.store.records("note").size() == subjects.size());
}

TEST_CASE("what is named elsewhere is not removed, and the message says by what", "[either]") {
    House house;
    const TankId tank = house.store.addTank({{}, "B3", "Bay 3"});
    const std::int64_t added = house.lastChange();
    house.store.addStay({house.animal, tank, Date{2031y / 1 / 1}, std::nullopt});
    house.store.addRecord("note", {{"tank", "B3"}, {"on_day", "2031-02-01"}, {"text", "pump"}});
    const std::string named =
        "other records name this tank: stay (1, as tank), note (1, as tank); remove or change those first, or leave it";
    CHECK_THROWS_WITH(house.store.removeRecord("tank", tank.value, 1), named);
    CHECK_THROWS_WITH(house.store.undo(added), named);
    CHECK(house.store.tanks().size() == 1);
    // What the database itself refuses is told in the same words, whatever language it speaks.
    CHECK_THROWS_WITH(house.store.addStay({AnimalId{99}, tank, Date{2031y / 1 / 1}, std::nullopt}),
                      "other records name it, or it names one that is not there; remove or change those first");
}

TEST_CASE("a link to what is not there, an emptied code and text that is no UTF-8 are refused by name", "[either]") {
    House house;
    const auto note = [&](const std::string& field, const std::string& value) {
        RecordValues values{{"animal", "P4"}, {"on_day", "2031-02-01"}, {"text", "pump"}};
        if (field != "text") values.erase("animal");
        values[field] = value;
        return house.store.addRecord("note", values);
    };
    CHECK_THROWS_WITH(note("session", "abc"), "\"session\" must be the number of a session, not \"abc\"");
    CHECK_THROWS_WITH(note("session", "77"), "there is no session 77 in this collection");
    CHECK_THROWS_WITH(note("text", "caf\xe9"), "\"text\" must be text in UTF-8");
    const std::int64_t id = note("text", "caf\xc3\xa9");
    CHECK_THROWS_WITH(house.store.changeRecord("note", id, 1, {{"animal", ""}, {"photo", "x"}}),
                      "\"photo\" must be the number of a photo, not \"x\"");
    CHECK_THROWS_WITH(house.store.changeRecord("note", id, 1, {{"text", ""}}), "\"text\" may not be empty (Text)");
    CHECK_THROWS_WITH(house.store.changeRecord("animal", house.animal.value, 1, {{"code", ""}}),
                      "\"code\" may not be empty (The keeper's own code)");
    CHECK(house.store.record("note", id)->version == 1);
    CHECK_THROWS_WITH(house.store.addRecord("feeding", feeding("eaten\nall")),
                      "\"outcome\" must be one of: offered taken refused; not \"eaten all\"");
}

TEST_CASE("records are found by what their fields say", "[either]") {
    House house;
    house.store.addRecord("feeding", feeding());
    auto other = feeding("taken");
    other["note"] = "late";
    const std::int64_t late = house.store.addRecord("feeding", other);
    const auto numbers = [&](const RecordValues& values) {
        std::vector<std::int64_t> found;
        eachRecordWith(house.store, "feeding", values, [&](const Record& one) { found.push_back(one.id); });
        return found;
    };
    CHECK(numbers({}).size() == 2);
    CHECK(numbers({{"animal", "P4"}, {"outcome", "taken"}}) == std::vector{late});
    CHECK(numbers({{"note", ""}}) == std::vector{late - 1});
    CHECK(numbers({{"tank", ""}}).size() == 2);
    CHECK(numbers({{"animal", ""}}).empty());
    CHECK(numbers({{"on_day", "2031-03-02"}}).empty());
    CHECK_THROWS_WITH(numbers({{"animal", "P9"}}), "there is no animal \"P9\" in this collection");
    CHECK_THROWS_AS(numbers({{"colour", "red"}}), Error);
    CHECK_THROWS_AS(numbers({{"on_day", "1.3.2031"}}), Error);
}

TEST_CASE("a tank's diet is its animals', but for days on which one has its own", "[either]") {
    House house;
    const TankId tank = house.store.addTank({{}, "B3", "Bay 3"});
    const DietId frozen = house.store.addDiet({{}, "frozen", "Frozen", {"mysids"}, 3.0});
    const DietId live = house.store.addDiet({{}, "live", "Live", {"brine shrimp"}, 4.0});
    house.store.addStay({house.animal, tank, Date{2031y / 1 / 1}, std::nullopt});
    house.store.addTankDietSpell({tank, frozen, Date{2030y / 6 / 1}, std::nullopt});
    house.store.addDietSpell({house.animal, live, Date{2031y / 2 / 1}, Date{2031y / 2 / 10}});
    const auto spells = house.store.dietSpells();
    REQUIRE(spells.size() == 3);
    CHECK(spells[0].diet == frozen);
    CHECK(spells[0].from == Date{2031y / 1 / 1});
    CHECK(spells[0].to == Date{2031y / 1 / 31});
    CHECK(spells[1].diet == live);
    CHECK(spells[2].diet == frozen);
    CHECK(spells[2].from == Date{2031y / 2 / 11});
    CHECK_FALSE(spells[2].to.has_value());
}

TEST_CASE("all that keepers note comes back as it was told", "[either]") {
    House house;
    const TankId tank = house.store.addTank({{}, "B3", "Bay 3"});
    const BroodId brood = house.store.addBrood({{}, "R2", "Hippocampus reidi", house.animal, {}, tank, {}, "first"});
    house.store.addBroodEvent({brood, Date{2031y / 5 / 1}, "birth", 200, "at night"});
    house.store.addWaterReading({tank, Date{2031y / 5 / 2}, 24.5, std::nullopt, "K1", "after a change"});
    house.store.addTreatment({{}, tank, Date{2031y / 5 / 3}, {}, "fresh water dip", "5 min", "Dr V", "once"});
    house.store.addDecision({house.animal, Date{2031y / 5 / 4}, "thin", "watch", "K2", "feed twice"});
    house.store.addHandMeasure({house.animal, Date{2030y / 5 / 4}, "standard_length_mm", 88.5, 1.0, "ruler", "K1", ""});
    CHECK(house.store.broods().at(0).mother == house.animal);
    CHECK(house.store.broods().at(0).tank == tank);
    CHECK(house.store.broodEvents(brood).at(0).count == 200);
    CHECK(house.store.waterReadings(tank).at(0).temperatureC == 24.5);
    CHECK_FALSE(house.store.waterReadings(tank).at(0).salinityPpt.has_value());
    CHECK(house.store.treatments().at(0).orderedBy == "Dr V");
    CHECK_FALSE(house.store.treatments().at(0).animal.has_value());
    CHECK(house.store.decisions(house.animal).at(0).decision == "watch");
    CHECK(house.store.handMeasures(house.animal).at(0).u95 == 1.0);
    Animal animal = house.store.animals().at(0);
    animal.sexToldBy = "pouch";
    animal.source = "born here";
    animal.brood = brood;
    animal.goneOn = Date{2031y / 9 / 1};
    animal.goneHow = "left";
    house.store.updateAnimal(animal);
    animal = house.store.animals().at(0);
    CHECK(animal.sexToldBy == "pouch");
    CHECK(animal.brood == brood);
    CHECK(animal.goneOn == Date{2031y / 9 / 1});
    animal.goneOn.reset();
    animal.goneHow.clear();
    house.store.updateAnimal(animal);
    CHECK_FALSE(house.store.animals().at(0).goneOn.has_value());
}
