// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "older_collection.h"
#include "records/schema.h"
#include "ringrule/records/store.h"

using namespace ringrule;
using namespace std::chrono_literals;

TEST_CASE("a collection of version 1 opens, is brought up to date and keeps every row") {
    const ScratchFolder scratch;
    writeVersion1(scratch / "house");
    CHECK(schemaVersionOf(Database(scratch / "house/collection.sqlite", Database::Mode::ReadOnly)) == 1);
    const Store store = Store::open(scratch / "house");
    CHECK(schemaVersionOf(Database(scratch / "house/collection.sqlite", Database::Mode::ReadOnly)) ==
          currentSchemaVersion());
    const auto animals = store.animals();
    REQUIRE(animals.size() == 2);
    CHECK(animals[0].code == "P1");
    CHECK(animals[0].sex == Sex::Female);
    CHECK(animals[0].version == 1);
    CHECK(animals[0].goneHow.empty());
    CHECK(animals[1].name == "Wanderer");
    CHECK(animals[1].hatchedSdDays == 20.0);
    CHECK(animals[1].arrivedOn == Date{2030y / 12 / 1});
    CHECK(store.tanks().at(0).name == "Bay 3");
    CHECK(store.diets().at(0).foods == std::vector<std::string>{"live brine shrimp", "frozen mysids"});
    CHECK(store.stays().size() == 1);
    CHECK(store.dietSpells().size() == 1);
    CHECK(store.states().at(0).state == "brooding");
    CHECK(store.notes(animals[0].id).at(0).text == "Eats well; \"greedy\".");
    CHECK(store.photos(store.sessions().at(0).id).size() == 2);
    CHECK(store.changes().at(0).after == "measure 3, standard length 66.50 mm");
    CHECK(store.boxChecks().empty());
}

TEST_CASE("measures of version 1 keep values, landmarks, lines and corrections") {
    const ScratchFolder scratch;
    writeVersion1(scratch / "house");
    const Store store = Store::open(scratch / "house");
    const auto measures = store.measuresOfAnimal(store.animals().at(0).id);
    REQUIRE(measures.size() == 2);  // of three rows one is replaced
    CHECK(measures[0].measurement.standardLengthMm.value == 65.696427689979287833);
    CHECK(measures[1].measurement.standardLengthMm.value == 66.5);
    CHECK(measures[1].replaces == MeasureId{2});
    CHECK(measures[0].outlinePx.size() == 3);
    CHECK(measures[0].spinePx.at(1).x == 9.5);
    CHECK(measures[0].landmarks.snoutTip->atPx.x == 653.02647135846621038);
    CHECK(measures[0].sessionOn == Date{2031y / 1 / 6});
}

TEST_CASE("notes of version 3 are kept, may be on other things than animals from then on, and their changes undone") {
    const ScratchFolder scratch;
    writeVersion(3, scratch / "house");
    Store store = Store::open(scratch / "house");
    const auto notes = store.records("note");
    REQUIRE(notes.size() == 2);
    CHECK(notes[0].values == RecordValues{{"animal", "P4"}, {"on_day", "2031-01-02"}, {"text", "Eats well."}});
    CHECK(notes[1].text("text") == "Left the \"frozen\" food; three times.");
    CHECK(notes[1].version == 2);
    CHECK(store.notes(store.animals().at(0).id).size() == 2);
    const auto changes = store.changes();
    const auto changed = std::find_if(changes.begin(), changes.end(), [](const Change& one) {
        return one.what == "changed" && one.subject == "note 2";
    });
    REQUIRE(changed != changes.end());
    store.undo(changed->id);
    CHECK(store.record("note", 2)->text("text") == "Left the \"frozen\" food; twice.");
    CHECK(store.measuresOfSession(store.sessions().at(0).id).size() == 2);
    CHECK(store.decisions().at(0).followUpOn == Date{2031y / 2 / 1});
    store.addRecord("note", {{"tank", "B3"}, {"on_day", "2031-02-03"}, {"text", "filter cleaned"}});
}

TEST_CASE("a collection made new has the tables that an older one has after its steps") {
    const ScratchFolder scratch;
    writeVersion1(scratch / "old");
    static_cast<void>(Store::open(scratch / "old"));
    static_cast<void>(Store::create(scratch / "new"));
    const auto tables = [](const std::filesystem::path& folder) {
        return Database(folder / "collection.sqlite", Database::Mode::ReadOnly)
            .textOf(
                "SELECT group_concat(m.name || '.' || c.name || ' ' || c.type, ', ') FROM (SELECT * FROM "
                "sqlite_schema ORDER BY name) m, pragma_table_info(m.name) c");
    };
    CHECK(tables(scratch / "old") == tables(scratch / "new"));
}

TEST_CASE("a migration that fails half-way leaves the older collection, and the next one succeeds") {
    const ScratchFolder scratch;
    writeVersion1(scratch / "house");
    {
        // A table of a later step's name stands in the way.
        Database(scratch / "house/collection.sqlite", Database::Mode::ReadWrite).run("CREATE TABLE treatment (a)");
    }
    CHECK_THROWS(Store::open(scratch / "house"));
    {
        Database database(scratch / "house/collection.sqlite", Database::Mode::ReadWrite);
        CHECK(schemaVersionOf(database) == 1);
        CHECK(database.textOf("SELECT count(*) FROM sqlite_schema WHERE name = 'brood'") == "0");
        CHECK(database.textOf("SELECT length(outline_px) FROM measure WHERE id = 1") == "33");
        database.run("DROP TABLE treatment");
    }
    CHECK(Store::open(scratch / "house").animals().size() == 2);
}
