// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <limits>

#include "../scratch_folder.h"
#include "either_store.h"
#include "records/collection_file.h"
#include "ringrule/records/table_import.h"
#include "ringrule/records/verify.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;
using Catch::Matchers::StartsWith;

namespace {

struct Bays {
    ScratchFolder scratch;
    Store store = newCollection(scratch / "house");
    AnimalId animal = store.addAnimal(sample::animal());

    Bays() {
        for (const char* code : {"B3", "B4"}) store.addTank({{}, code, ""});
        for (const char* code : {"live", "frozen"}) store.addDiet({{}, code, "", {}, 3.0});
    }
    std::int64_t stay(const std::string& tank, const std::string& from, const std::string& to = {}) {
        return store.addRecord("stay", {{"animal", "P4"}, {"tank", tank}, {"from_day", from}, {"to_day", to}});
    }
    std::int64_t byHand(const std::string& measure, const std::string& value, const std::string& u95 = {}) {
        return store.addRecord(
            "hand-measure",
            {{"animal", "P4"}, {"on_day", "2031-03-01"}, {"measure", measure}, {"value", value}, {"u95", u95}});
    }
    void change(const std::string& kind, std::int64_t id, const RecordValues& values) {
        store.changeRecord(kind, id, store.record(kind, id)->version, values);
    }
    /// Writes as a version did that refused nothing.
    void slipIn(const std::string& sql) { CollectionFile::of(store).run(sql); }
    /// The sentences of the rows that a table of this kind is refused for, each after its line.
    std::vector<std::string> refusedRows(const std::string& kind, const std::string& table) {
        TableImportOptions options;
        options.write = true;
        const TableImport told = importTable(store, scratch.write("table.csv", table), kind, options);
        CHECK_FALSE(told.written);
        std::vector<std::string> rows;
        for (const auto& bad : told.bad) rows.push_back(std::to_string(bad.line) + ": " + bad.sentence);
        return rows;
    }
};

}  // namespace

TEST_CASE("an animal in two tanks at once is refused, a move on one day is not", "[either]") {
    Bays house;
    const std::int64_t first = house.stay("B3", "2031-01-01");
    CHECK_THROWS_WITH(house.stay("B4", "2031-02-01"),
                      "animal \"P4\" is in tank \"B3\" from 2031-01-01 on already; end that stay first, or choose days "
                      "that share with it no more than its first or last day");
    house.change("stay", first, {{"to_day", "2031-02-01"}});
    const std::int64_t second = house.stay("B4", "2031-02-01");
    house.stay("B3", "2030-12-01", "2031-01-01");
    CHECK_THROWS_WITH(house.change("stay", first, {{"to_day", "2031-02-02"}}),
                      StartsWith("animal \"P4\" is in tank \"B4\" from 2031-02-01 on already"));
    CHECK_THROWS_WITH(house.change("stay", second, {{"from_day", "2031-01-31"}}),
                      StartsWith("animal \"P4\" is in tank \"B3\" from 2031-01-01 to 2031-02-01 already"));
    CHECK(house.store.stays().size() == 3);
    house.store.addAnimal(sample::animal("P5", 15));
    house.store.addRecord("stay", {{"animal", "P5"}, {"tank", "B3"}, {"from_day", "2031-01-01"}});
}

TEST_CASE("taking a removal back does not put an animal into two tanks", "[either]") {
    Bays house;
    const std::int64_t first = house.stay("B3", "2031-01-01");
    house.store.removeRecord("stay", first, 1);
    const std::int64_t removal = house.store.newestChange();
    const std::int64_t second = house.stay("B4", "2031-01-05");
    CHECK_THROWS_WITH(house.store.undo(removal), StartsWith("animal \"P4\" is in tank \"B4\""));
    house.store.removeRecord("stay", second, 1);
    house.store.undo(removal);
    CHECK(house.store.stays().size() == 1);
}

TEST_CASE("two diets of an animal, or of a tank, at once are refused; one of each is not", "[either]") {
    Bays house;
    house.stay("B3", "2031-01-01");
    const auto add = [&](const std::string& kind, const std::string& field, const std::string& whose,
                         const std::string& diet, const std::string& from) {
        return house.store.addRecord(kind, {{field, whose}, {"diet", diet}, {"from_day", from}});
    };
    add("diet-spell", "animal", "P4", "live", "2031-01-01");
    CHECK_THROWS_WITH(add("diet-spell", "animal", "P4", "frozen", "2031-01-09"),
                      StartsWith("animal \"P4\" has diet \"live\" from 2031-01-01 on already; end that spell first"));
    add("tank-diet", "tank", "B3", "frozen", "2030-01-01");
    CHECK_THROWS_WITH(add("tank-diet", "tank", "B3", "live", "2031-01-09"),
                      StartsWith("tank \"B3\" has diet \"frozen\" from 2030-01-01 on already"));
}

TEST_CASE("a measure by hand that no animal has is refused", "[either]") {
    Bays house;
    const std::string length = "standard_length_mm";
    CHECK_THROWS_WITH(house.byHand(length, "-5"),
                      "\"value\" of standard_length_mm must lie between 0.1 and 1000 mm, "
                      "not -5; correct it, or leave the measure out");
    for (const char* value : {"0", "1e9", "0.05", "1000.5"})
        CHECK_THROWS_WITH(house.byHand(length, value), StartsWith("\"value\" of standard_length_mm must lie between"));
    for (const char* value : {"nan", "inf"})
        CHECK_THROWS_WITH(house.byHand(length, value), StartsWith("\"value\" must be a number"));
    CHECK_THROWS_AS(
        house.store.addHandMeasure(
            {house.animal, Date{2031y / 3 / 1}, length, std::numeric_limits<double>::quiet_NaN(), {}, "", "", ""}),
        Error);
    CHECK_THROWS_WITH(house.byHand("depth_ratio", "-0.1"), StartsWith("\"value\" of depth_ratio must lie"));
    CHECK_THROWS_WITH(house.byHand("belly_hollow_percent", "101"), StartsWith("\"value\" of belly_hollow_percent"));
    for (const char* u95 : {"0", "-1", "1e9"})
        CHECK_THROWS_WITH(house.byHand(length, "100", u95), StartsWith("\"u95\" of standard_length_mm must lie"));
    CHECK(house.store.handMeasures().empty());
    house.byHand("belly_hollow_percent", "-2.5");
    const std::int64_t id = house.byHand(length, "0.1", "0.05");
    CHECK_THROWS_AS(house.change("hand-measure", id, {{"value", "-7"}}), Error);
    CHECK(house.store.handMeasures().back().value == 0.1);
}

TEST_CASE("rows of a table that cannot be are told by their lines, against the table itself too", "[either]") {
    Bays house;
    const auto stays = house.refusedRows("stay",
                                         "animal,tank,from_day,to_day\n"
                                         "P4,B3,2031-01-01,2031-02-01\n"
                                         "P4,B4,2031-02-01,\n"
                                         "P4,B3,2031-01-15,2031-01-20\n"
                                         "P4,B3,2031-05-01,\n");
    REQUIRE(stays.size() == 2);
    CHECK_THAT(stays[0], StartsWith("4: animal \"P4\" is in tank \"B3\" from 2031-01-01 to 2031-02-01"));
    CHECK_THAT(stays[1], StartsWith("5: animal \"P4\" is in tank \"B4\" from 2031-02-01 on"));
    CHECK(house.store.stays().empty());
    const auto lengths = house.refusedRows("hand-measure", "animal,date,SL (mm)\nP4,2031-01-01,90\nP4,2031-02-01,-5\n");
    REQUIRE(lengths.size() == 1);
    CHECK_THAT(lengths[0], StartsWith("3: \"value\" of standard_length_mm"));
}

TEST_CASE("what an older version let in opens, is told, and is put right step by step", "[either]") {
    Bays house;
    const std::int64_t first = house.stay("B3", "2031-01-01");
    house.slipIn(
        "INSERT INTO stay (id, animal, tank, from_day) VALUES (50, 1, 2, '2031-02-01'), "
        "(51, 1, 1, '2031-03-01')");
    house.slipIn(
        "INSERT INTO hand_measure (id, animal, on_day, measure, value, method, keeper, note) "
        "VALUES (60, 1, '2031-01-01', 'height_mm', -5, '', '', '')");
    const auto told = [&] { return verifyCollection(house.scratch / "house").toCorrect; };
    CHECK(Store::open(house.scratch / "house").stays().size() == 3);
    REQUIRE(told().size() == 4);
    CHECK(told()[0] ==
          "stay 1 and stay 50: animal \"P4\" is in tank \"B3\" from 2031-01-01 on and tank \"B4\" from "
          "2031-02-01 on; correct or remove one of them");
    CHECK_THAT(told()[3], StartsWith("hand-measure 60 of animal \"P4\": \"value\" of height_mm must lie between"));
    CHECK(verifyCollection(house.scratch / "house").whole());
    // Each step leaves trouble, but less of it; one that makes more is refused.
    house.change("stay", first, {{"to_day", "2031-02-01"}});
    CHECK_THROWS_AS(house.change("stay", first, {{"to_day", ""}}), Error);
    house.change("stay", 51, {{"tank", "B4"}});
    house.change("stay", 50, {{"to_day", "2031-03-01"}});
    house.change("hand-measure", 60, {{"note", "a slip?"}});
    CHECK(told().size() == 1);
    house.change("hand-measure", 60, {{"value", "5"}});
    CHECK(told().empty());
}
