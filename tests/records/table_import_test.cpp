// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "either_store.h"
#include "ringrule/records/table_import.h"
#include "sample_records.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

struct House {
    ScratchFolder scratch;
    Store store = newCollection(scratch / "house");

    TableImport import(const std::string& kind, const std::string& table, const TableImportOptions& options = {}) {
        return importTable(store, scratch.write("table.csv", table), kind, options);
    }
};

}  // namespace

TEST_CASE("a keeper's table of animals is shown first and written when told", "[either]") {
    House house;
    const std::string table =
        "Animal ID;Species;Shape;Sex;Born;Shelf\r\n"
        "P1;Syngnathus typhle;pipefish;F;2030-11-15;3\r\n"
        "P2;Syngnathus typhle;pipefish;?;ca. 2030-11-01;4\r\n";
    TableImportOptions options;
    TableImport seen = house.import("animal", table, options);
    CHECK(seen.rows == 2);
    CHECK(seen.records == 2);
    CHECK(seen.bad.empty());
    CHECK_FALSE(seen.written);
    CHECK(house.store.animals().empty());
    CHECK(house.store.changes().empty());
    CHECK(seen.columns.at(0).field == "code");
    CHECK(seen.columns.at(4).field == "hatched_on");
    CHECK(seen.columns.at(4).example == "2030-11-15");
    CHECK(seen.columns.at(5).field.empty());
    options.write = true;
    options.fieldOfColumn = {{"Shelf", "source"}};
    CHECK(house.import("animal", table, options).written);
    const auto animals = house.store.animals();
    REQUIRE(animals.size() == 2);
    CHECK(animals[0].sex == Sex::Female);
    CHECK(animals[0].hatchedExactly);
    CHECK(animals[0].source == "3");
    CHECK(animals[1].sex == Sex::Unknown);
    CHECK_FALSE(animals[1].hatchedExactly);
}

TEST_CASE("one bad row keeps all from being written, and each is told by its line", "[either]") {
    House house;
    TableImportOptions options;
    options.write = true;
    const TableImport told = house.import("animal",
                                          "code,species,hatched_on,card\n"
                                          "P1,\"a\nname over two lines\",2030-11-15,1\n"
                                          "P1,S,2030-11-15,2\n"
                                          "P2,S,15.13.2030,3\n"
                                          "P3,S,03/04/2030,4\n"
                                          ",S,2030-11-15,5\n"
                                          "P4,S,2030-11-15,1\n"
                                          "P5,S,2030-11-15,6,extra\n",
                                          options);
    CHECK_FALSE(told.written);
    CHECK(house.store.animals().empty());
    REQUIRE(told.bad.size() == 6);
    CHECK(told.bad[0].line == 4);
    CHECK(told.bad[0].sentence == "animal \"P1\" is already in this collection");
    CHECK(told.bad[1].line == 5);
    CHECK(told.bad[2].sentence.find("--day-order") != std::string::npos);
    CHECK(told.bad[3].sentence == "\"code\" is missing (The keeper's own code)");
    CHECK(told.bad[4].sentence.find("card 1 already belongs") != std::string::npos);
    CHECK(told.bad[5].line == 9);
}

TEST_CASE("past hand measurements come in wide or long, in cm, with decimal commas and days in the told order",
          "[either]") {
    House house;
    const AnimalId animal = house.store.addAnimal(sample::animal());
    TableImportOptions options;
    options.write = true;
    options.dayOrder = DayOrder::DayFirst;
    options.always = {{"method", "ruler"}, {"keeper", "K1"}};
    const TableImport wide = house.import("hand-measure",
                                          "Code;Date;SL (cm);TD (mm);Notes\n"
                                          "P4;03/04/2030;10,1;4,5;calm\n"
                                          "P4;04.05.2030;10,75 cm;;\n",
                                          options);
    INFO((wide.bad.empty() ? "" : wide.bad[0].sentence));
    CHECK(wide.written);
    CHECK(wide.records == 3);
    const auto measures = house.store.handMeasures(animal);
    REQUIRE(measures.size() == 3);
    CHECK(measures[0].measure == "standard_length_mm");
    CHECK(measures[0].value == 101.0);
    CHECK(measures[0].on == Date{2030y / 4 / 3});
    CHECK(measures[0].method == "ruler");
    CHECK(measures[1].value == 4.5);
    CHECK(measures[2].value == 107.5);
    options.dayOrder = DayOrder::NotTold;
    const TableImport tall = house.import("hand-measure",
                                          "animal,on_day,measure,value,u95\n"
                                          "P4,2030-06-01,height_mm,12.5,0.5\n",
                                          options);
    CHECK(tall.written);
    CHECK(house.store.handMeasures(animal).back().u95 == 0.5);
}

TEST_CASE("a mapping that cannot be is refused before any row is tried", "[either]") {
    House house;
    TableImportOptions options;
    options.fieldOfColumn = {{"colour", "code"}};
    CHECK_THROWS_AS(house.import("animal", "code\nP1\n", options), Error);
    options.fieldOfColumn = {{"code", "colour"}};
    CHECK_THROWS_AS(house.import("animal", "code\nP1\n", options), Error);
    CHECK_THROWS_AS(house.import("animal", "code,id\nP1,P1\n"), Error);
    CHECK_THROWS_AS(house.import("animal", ""), Error);
    CHECK_THROWS_AS(house.import("measure", "code\nP1\n"), Error);
}

TEST_CASE("a table in another encoding, or with a mark that never closes, is refused with its line", "[either]") {
    House house;
    using Catch::Contains;
    TableImportOptions options;
    options.write = true;
    const auto refusal = [&](const std::string& table) {
        try {
            static_cast<void>(house.import("animal", table, options));
        } catch (const Error& error) {
            CHECK(error.kind() == ErrorKind::BadData);
            return std::string(error.what());
        }
        return std::string("no refusal");
    };
    const std::string latin1 = "code,species,name\nP1,S,plain\nP2,S,caf\xe9\n";
    CHECK_THAT(refusal(latin1), Contains("table.csv: line 3: this is not text in UTF-8"));
    CHECK_THAT(refusal(std::string("\xff\xfe"
                                   "c\0o\0",
                                   6)),
               Contains("line 1: this is not text in UTF-8"));
    CHECK_THAT(refusal(std::string("c\0o\0", 4)), Contains("line 1: this is not text in UTF-8"));
    CHECK_THAT(refusal("code,species\nP1,S\nP2,\"S\nP3,S\n"),
               Contains("table.csv: line 3: a quotation mark is opened here and never closed"));
    CHECK(house.store.animals().empty());
    const TableImport cut = house.import("animal", "code,species,name\nP1,S\nP2,S,\n", options);
    REQUIRE(cut.bad.size() == 1);
    CHECK(cut.bad[0].line == 2);
    CHECK(cut.bad[0].sentence == "has 2 cells, the table's head has 3");
    CHECK(house.store.animals().empty());
}
