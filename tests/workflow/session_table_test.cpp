// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "ringrule/workflow/session_table.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

Observation seen(Date on, double lengthMm) {
    Observation o;
    o.on = on;
    o.standardLengthMm = {lengthMm, 0.1, 0.1};
    o.sidePhotos = 2;
    return o;
}

AnimalHistory history(std::int64_t id, std::vector<Observation> observations) {
    AnimalHistory h;
    h.animal.id.value = id;
    h.animal.code = "P" + std::to_string(id);
    h.animal.species = "Syngnathus typhle";
    h.observations = std::move(observations);
    return h;
}

}  // namespace

TEST_CASE("rows of a day carry growth since the last session that has a length") {
    Observation noLength = seen(Date{2031y / 1 / 20}, 0.0);
    noLength.standardLengthMm = {};
    const std::vector<AnimalHistory> histories{
        history(1, {seen(Date{2031y / 1 / 6}, 100.0), noLength, seen(Date{2031y / 2 / 5}, 115.0)}),
        history(2, {seen(Date{2031y / 2 / 5}, 90.0)}), history(3, {seen(Date{2031y / 1 / 6}, 80.0)})};
    Finding flag;
    flag.kind = FindingKind::BehindTankmates;
    flag.animal.value = 2;
    Finding doubt = flag;
    doubt.kind = FindingKind::CannotTell;
    const std::vector<Finding> findings{flag, doubt};
    const auto rows = sessionRows(histories, Date{2031y / 2 / 5}, findings);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].animalCode == "P1");
    CHECK(rows[0].mmPerDay.value == Approx(15.0 / 30.0).margin(1e-12));  // 30 days from 6 January to 5 February
    CHECK(rows[0].findings.empty());
    CHECK_FALSE(rows[1].mmPerDay.known());
    CHECK(rows[1].findings == std::vector<std::string>{"behind tankmates"});
    CHECK(sessionDays(histories) == std::vector<Date>{Date{2031y / 1 / 6}, Date{2031y / 1 / 20}, Date{2031y / 2 / 5}});
}

TEST_CASE("a field is quoted where RFC 4180 asks for it and never read as a formula") {
    CHECK(csvField("plain") == "plain");
    CHECK(csvField("a,b") == "\"a,b\"");
    CHECK(csvField("say \"hi\"") == "\"say \"\"hi\"\"\"");
    CHECK(csvField("two\nlines") == "\"two\nlines\"");
    CHECK(csvField("=1+1") == "'=1+1");
    CHECK(csvField("@x,y") == "\"'@x,y\"");
    CHECK(csvField("").empty());
}

TEST_CASE("every line of the table has as many fields as its head") {
    const std::vector<AnimalHistory> histories{history(1, {seen(Date{2031y / 1 / 6}, 100.0)})};
    const std::string head = csvHead();
    const std::string lines = csvLines(sessionRows(histories, Date{2031y / 1 / 6}, {}));
    CHECK(head.ends_with("\r\n"));
    CHECK(lines.ends_with("\r\n"));
    CHECK(std::count(head.begin(), head.end(), ',') == std::count(lines.begin(), lines.end(), ','));
    // 1.96 times the root of 0.1² + 0.1².
    CHECK(lines.starts_with("P1,Syngnathus typhle,2031-01-06,,2,100.000,0.277,,,"));
}
