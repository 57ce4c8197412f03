// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>

#include "../scratch_folder.h"
#include "run_program.h"

namespace {

/// A collection; its database is on the test server when script/with-postgresql runs this.
struct House {
    ScratchFolder scratch;
    std::string store = (scratch / "house").string();

    House() {
        const char* const server = std::getenv("RINGRULE_TEST_SERVER");
        if (server == nullptr) {
            REQUIRE(run({"create", store}).status == 0);
        } else {
            static int made = 0;
            const std::string name = "cli_" + std::to_string(++made);
            const std::string at = "createdb -T template0 --maintenance-db='" + std::string(server) + "/postgres' ";
            REQUIRE(std::system((at + name).c_str()) == 0);
            const std::string folder = store;
            store = std::string(server) + "/" + name;
            CHECK(run({"create", store}).status == 2);  // where are its photos to go?
            REQUIRE(run({"create", store, "--photos", folder}).status == 0);
        }
        REQUIRE(
            add({"animal", "code=P4", "species=Syngnathus typhle", "shape=pipefish", "hatched_on=2030-11-15"}).status ==
            0);
    }
    [[nodiscard]] static Ran run(const std::vector<std::string>& words) { return ringrule(words); }
    /// A command on this collection: `words` with `--store` at the end.
    [[nodiscard]] Ran on(std::vector<std::string> words) const {
        words.insert(words.end(), {"--store", store});
        return ringrule(words);
    }
    [[nodiscard]] Ran add(std::vector<std::string> words) const {
        words.insert(words.begin(), "add");
        words.insert(words.end(), {"--keeper", "K1"});
        return on(words);
    }
};

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("records are added, changed, listed, logged and taken back by commands", "[either]") {
    const House house;
    CHECK(house.add({"feeding", "animal=P4", "on_day=2031-03-01", "food=frozen mysids", "outcome=refused"}).out ==
          "Added feeding 1\n");
    CHECK(has(house.on({"list", "feeding"}).out, "1,1,P4,,2031-03-01,frozen mysids,refused,K1,\r\n"));
    CHECK(house.on({"change", "animal", "P4", "sex=male", "--row-version", "1"}).status == 0);
    const Ran late = house.on({"change", "animal", "P4", "sex=female", "--row-version", "1"});
    CHECK(late.status == 2);
    CHECK(has(late.err, "animal P4 was changed by"));
    const Ran log = house.on({"log", "--of", "animal P4"});
    CHECK(has(log.out, "changed animal P4: sex: unknown -> sex: male"));
    CHECK(house.on({"undo", "3"}).status == 0);
    CHECK(has(house.on({"list", "animal"}).out, ",unknown,"));
    CHECK(house.on({"remove", "feeding", "1"}).status == 0);
    CHECK_FALSE(has(house.on({"list", "feeding"}).out, "P4"));
    const Ran bad = house.add({"feeding", "animal=P9", "on_day=2031-03-01", "food=x", "outcome=taken"});
    CHECK(bad.status == 2);
    CHECK(bad.err == "ringrule: there is no animal \"P9\" in this collection\n");
    CHECK(has(House::run({"list"}).out, "feeding: Food offered, taken or refused"));
}

TEST_CASE("what a keeper asks is answered", "[either]") {
    const House house;
    for (const std::string day : {"2031-03-01", "2031-03-02", "2031-03-03"})
        REQUIRE(house.add({"feeding", "animal=P4", "on_day=" + day, "food=mysids", "outcome=refused"}).status == 0);
    CHECK(house.on({"who", "refusing", "--on", "2031-03-03"}).out == "P4: refused on 3 days running, last mysids\n");
    CHECK(house.on({"who", "refusing", "--on", "2031-03-03", "--days", "4"}).out == "Nobody.\n");
    CHECK(house.on({"who", "due"}).out == "P4: never photographed\n");
    CHECK(house.on({"who", "unmeasured"}).out == "P4: never measured\n");
    CHECK(has(house.on({"who", "unsexed", "--on", "2031-06-15"}).out, "P4: hatched 2030-11-15, 212 days ago"));
    CHECK(house.on({"who", "knows"}).status == 2);
}

TEST_CASE("backup and restore, archive and unpack, export and import give the collection back", "[either]") {
    const House house;
    REQUIRE(house.on({"backup"}).status == 0);
    CHECK(has(house.on({"backup", "--list"}).out, "collection-"));
    REQUIRE(house.add({"tank", "code=B3"}).status == 0);
    const std::string archive = house.scratch / "house.zip";
    CHECK(house.on({"archive", "--out", archive}).status == 0);
    CHECK(house.on({"restore"}).status == 0);
    CHECK_FALSE(has(house.on({"list", "tank"}).out, "B3"));
    const std::string again = house.scratch / "again";
    CHECK(House::run({"unpack", archive, again}).status == 0);
    CHECK(has(ringrule({"list", "tank", "--store", again}).out, "B3"));
    CHECK(House::run({"unpack", archive, again}).status == 2);
    CHECK(House::run({"unpack", archive, "postgresql:///nowhere"}).status == 2);  // where are its photos to go?
    const std::string package = house.scratch / "package";
    CHECK(house.on({"export", "--out", package}).status == 0);
    const std::string third = house.scratch / "third";
    CHECK(House::run({"import", package, "--new", third}).status == 0);
    CHECK(ringrule({"list", "animal", "--store", third}).out == house.on({"list", "animal"}).out);
    CHECK(house.on({"export", "--out", house.scratch / "dwc", "--as", "darwin-core"}).status == 0);
    CHECK(house.on({"verify"}).status == 0);
    CHECK(house.on({"check"}).status == 0);  // the same, under the word one thinks of first
    CHECK(House::run({"check"}).status == 2);
}

TEST_CASE("a table is shown before it is written, and a bad row is told by its line", "[either]") {
    const House house;
    const std::string table = house.scratch.write("old.csv", "animal;date;SL (cm)\nP4;3/4/2030;10,1\nP9;13/4/2030;9\n");
    const std::vector<std::string> words{"import", table, "--as", "hand-measure", "--day-order", "dmy"};
    const Ran seen = house.on(words);
    CHECK(seen.status == 1);
    CHECK(has(seen.out, "SL (cm) -> standard_length_mm, times 10 (10,1)"));
    CHECK(has(seen.err, "line 3: there is no animal \"P9\""));
    house.scratch.write("old.csv", "animal;date;SL (cm)\nP4;3/4/2030;10,1\n");
    CHECK(has(house.on(words).out, "Nothing was written"));
    auto writing = words;
    writing.emplace_back("--write");
    CHECK(house.on(writing).status == 0);
    CHECK(has(house.on({"list", "hand-measure"}).out, "P4,2030-04-03,standard_length_mm,101,"));
}

TEST_CASE("records are listed by what their fields say, and notes kept on a tank", "[either]") {
    const House house;
    REQUIRE(house.add({"tank", "code=B3"}).status == 0);
    REQUIRE(house.add({"note", "tank=B3", "on_day=2031-03-01", "text=pump off"}).status == 0);
    REQUIRE(house.add({"note", "animal=P4", "on_day=2031-03-01", "text=eats"}).status == 0);
    const std::string head = "number,row_version,animal,tank,brood,session,photo,on_day,text,keeper\r\n";
    CHECK(house.on({"list", "note", "tank=B3"}).out == head + "1,1,,B3,,,,2031-03-01,pump off,K1\r\n");
    CHECK(house.on({"list", "note", "tank=", "on_day=2031-03-01"}).out == head + "2,1,P4,,,,,2031-03-01,eats,K1\r\n");
    CHECK(house.on({"list", "note", "text=nothing"}).out == head);
    const Ran wrong = house.on({"list", "note", "tank=B9"});
    CHECK(wrong.status == 2);
    CHECK(wrong.out.empty());
    CHECK(wrong.err == "ringrule: there is no tank \"B9\" in this collection\n");
    CHECK(has(house.add({"note", "on_day=2031-03-01", "text=eats"}).err, "say one of \"animal\", \"tank\""));
}

TEST_CASE("a change tells the number that takes it back, and one that changes nothing says so", "[either]") {
    const House house;
    const Ran changed = house.on({"change", "animal", "P4", "sex=male", "--keeper", "K1"});
    CHECK(changed.out == "Changed animal P4; to take it back: ringrule undo 2\n");
    const Ran again = house.on({"change", "animal", "P4", "sex=male", "--keeper", "K1"});
    CHECK(again.out == "Nothing was to be changed: animal P4 says so already\n");
    CHECK(has(house.on({"undo", "2"}).out, "undone animal P4"));
}

TEST_CASE("a collection gets species values of its own, edited, checked and logged", "[either]") {
    const House house;
    const std::string file = house.scratch / "species.json";
    REQUIRE(house.on({"species", "--write", file}).status == 0);
    CHECK(house.on({"species", "--write", file}).status == 2);  // it is there
    const std::string shipped = contentOf(file);
    const Ran put = house.on({"species", "--put", "shipped", "--keeper", "K1"});
    CHECK(put.status == 0);
    CHECK(contentOf(house.scratch / "house/species.json") == shipped);
    CHECK(has(house.on({"log"}).out, "K1  set species.json: as shipped"));
    std::string edited = shipped;
    const auto at = edited.find("\"usual_milestones\": [");
    REQUIRE(at != std::string::npos);
    edited.insert(at + 21, R"({"name": "moved by us", "length_mm": 30, "source": "house rule"},)");
    house.scratch.write("edited.json", edited);
    const Ran second = house.on({"species", "--put", house.scratch / "edited.json", "--keeper", "K1"});
    CHECK(second.err.empty());
    CHECK(has(second.out, "the former one is kept as"));
    CHECK(contentOf(house.scratch / "house/backups/species-1.json") == shipped);
    CHECK(has(house.on({"species"}).out, "moved by us at 30 mm  (house rule)"));
    REQUIRE(house.on({"species", "--write", house.scratch / "own.json"}).status == 0);
    CHECK(contentOf(house.scratch / "own.json") == edited);
    house.scratch.write("spoiled.json", "{");
    CHECK(house.on({"species", "--put", house.scratch / "spoiled.json"}).status == 2);
    CHECK(contentOf(house.scratch / "house/species.json") == edited);
    CHECK(House::run({"species", "--put", "shipped"}).status == 2);
}

TEST_CASE("commands on a collection: bad use is status 2, and each has its help", "[either]") {
    const House house;
    CHECK(house.on({"add", "meal", "x=1"}).status == 2);
    CHECK(house.on({"add", "tank", "code"}).status == 2);
    CHECK(house.on({"undo", "99"}).status == 2);
    CHECK(house.on({"restore"}).status == 2);  // no backup
    CHECK(House::run({"undo", "abc", "--store", "x"}).err ==
          "ringrule: Could not convert: NUMBER = abc; see: ringrule undo --help\n");
    CHECK(House::run({"box", "water"}).err == "ringrule: --box is required; see: ringrule box water --help\n");
    CHECK(House::run({"dance"}).err.find('\n') == House::run({"dance"}).err.size() - 1);
    CHECK(house.on({"who", "due", "--on", "31.12.2030"}).err ==
          "ringrule: --on needs a day such as 2031-01-06, not \"31.12.2030\"\n");
    CHECK(house.on({"archive", "--out", house.scratch / "nowhere/a.zip"}).status == 2);
    CHECK(house.on({"import", "nowhere.csv", "--as", "animal"}).status == 2);
    CHECK(House::run({"import", "nowhere"}).status == 2);
    for (const char* command : {"add", "change", "remove", "list", "log", "undo", "who", "verify", "backup", "restore",
                                "archive", "unpack", "export", "import"}) {
        INFO(command);
        CHECK(ringrule({command, "--help"}).status == 0);
    }
}

TEST_CASE("what no animal can be is refused with a line and status 2", "[either]") {
    const House house;
    for (const char* tank : {"code=B3", "code=B4"}) REQUIRE(house.add({"tank", tank}).status == 0);
    REQUIRE(house.add({"stay", "animal=P4", "tank=B3", "from_day=2031-01-01"}).status == 0);
    const Ran twice = house.add({"stay", "animal=P4", "tank=B4", "from_day=2031-02-01"});
    CHECK(twice.status == 2);
    CHECK(twice.err ==
          "ringrule: animal \"P4\" is in tank \"B3\" from 2031-01-01 on already; end that stay first, or choose days "
          "that share with it no more than its first or last day\n");
    const std::vector<std::string> length{"hand-measure", "animal=P4", "on_day=2031-01-01", "measure=height_mm"};
    for (const char* value : {"value=-5", "value=0", "value=nan", "value=1e9"}) {
        auto words = length;
        words.emplace_back(value);
        CHECK(house.add(words).status == 2);
    }
    auto good = length;
    good.emplace_back("value=50");
    REQUIRE(house.add(good).status == 0);
    const Ran changed = house.on({"change", "hand-measure", "1", "value=-5"});
    CHECK(changed.status == 2);
    CHECK(changed.err ==
          "ringrule: \"value\" of height_mm must lie between 0.1 and 1000 mm, not -5; correct it, or leave the "
          "measure out\n");
    const std::string table = house.scratch.write("t.csv", "animal,date,height\nP4,2031-02-01,55\nP4,2031-03-01,0\n");
    const Ran rows = house.on({"import", table, "--as", "hand-measure", "--map", "height=height_mm", "--write"});
    CHECK(rows.status == 1);
    CHECK(has(rows.err, "line 3: \"value\" of height_mm"));
    CHECK(house.on({"check"}).status == 0);
}

TEST_CASE("an animal that an older collection has in two tanks at once is told by check", "[either]") {
    const House house;
    for (const char* tank : {"code=B3", "code=B4"}) REQUIRE(house.add({"tank", tank}).status == 0);
    REQUIRE(house.add({"stay", "animal=P4", "tank=B3", "from_day=2031-01-01"}).status == 0);
    const std::string package = house.scratch / "package";
    REQUIRE(house.on({"export", "--out", package}).status == 0);
    std::ofstream(package + "/stay.csv", std::ios::app) << "7,1,P4,B4,2031-02-01,\r\n";
    const std::string older = house.scratch / "older";
    REQUIRE(House::run({"import", package, "--new", older}).status == 0);
    const Ran check = ringrule({"check", "--store", older});
    CHECK(check.status == 1);
    CHECK(check.err ==
          "ringrule: stay 1 and stay 7: animal \"P4\" is in tank \"B3\" from 2031-01-01 on and tank \"B4\" from "
          "2031-02-01 on; correct or remove one of them\n");
    CHECK(has(check.out, "Records to correct: 1"));
    REQUIRE(ringrule({"change", "stay", "1", "to_day=2031-02-01", "--store", older}).status == 0);
    CHECK(ringrule({"check", "--store", older}).status == 0);
}
