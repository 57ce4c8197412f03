// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>

#include "../scratch_folder.h"
#include "run_program.h"
#include "samples.h"

// A session that was measured with the wrong box file, or before its animals were known, is mended by a command.

namespace {

struct House {
    ScratchFolder scratch;
    std::string store = scratch / "house";

    House() {
        REQUIRE(ringrule({"create", store}).status == 0);
        std::filesystem::create_directories(scratch / "photos");
        for (const char* name : {"P1-a_rendered.jpg", "P1-b_rendered.jpg"})
            std::filesystem::copy_file(samples::photo(std::string("2031-01-06/") + name), scratch / "photos" / name);
    }
    [[nodiscard]] Ran on(std::vector<std::string> words) const {
        words.insert(words.end(), {"--store", store});
        return ringrule(words);
    }
    [[nodiscard]] Ran session(const std::string& box) const {
        return on({"session", scratch / "photos", "--box", box});
    }
    void addP1() const {
        REQUIRE(on({"add", "animal", "code=P1", "species=Syngnathus typhle", "shape=pipefish", "card=1"}).status == 0);
    }
    /// The bench box with every millimetre of its plate made `by` times as long, or its markers numbered from another
    /// number.
    [[nodiscard]] std::string wrongBox(const std::string& file, const std::string& name, double by,
                                       int firstMarker = 0) const {
        std::ifstream in(samples::box());
        auto box = nlohmann::json::parse(in);
        box["name"] = name;
        for (auto& length : box["plate"]["size_mm"]) length = by * length.get<double>();
        for (auto& marker : box["plate"]["markers"]) {
            marker["id"] = marker["id"].get<int>() + firstMarker;
            marker["side_mm"] = by * marker["side_mm"].get<double>();
            for (auto& at : marker["centre_mm"]) at = by * at.get<double>();
        }
        return scratch.write(file, box.dump());
    }
};

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::size_t linesOf(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

/// P1's length in the table of a session, mm.
double lengthOfP1(const std::string& table) {
    const auto row = table.find("\n  P1 ");
    REQUIRE(row != std::string::npos);
    REQUIRE(table.find("\n  P1 ", row + 1) == std::string::npos);
    return std::stod(table.substr(row + 5));
}

double truthOfP1() {
    return samples::truth("2031-01-06", "P1-a_rendered")["standard_length_mm"];
}

}  // namespace

TEST_CASE("a session of the wrong box file is measured again with the right one") {
    const House house;
    house.addP1();
    const Ran wrong = house.session(house.wrongBox("wrong.json", "another box", 1.1));
    // The plate is told a tenth too long, and with it the animal.
    REQUIRE(lengthOfP1(wrong.out) > 1.08 * truthOfP1());
    const Ran stuck = house.session(samples::box());
    CHECK(stuck.status == 2);
    CHECK(has(stuck.err, "already in the collection (session 1)"));
    CHECK(has(stuck.err, "ringrule measure-again 1 --store " + house.store + "\n"));

    const Ran again = house.on({"measure-again", "1", "--box", samples::box(), "--keeper", "K2"});
    CHECK(again.status == 0);
    CHECK(again.err.empty());
    CHECK(has(again.out, "Measures: replaced 2, added 0, as before 0"));
    // As far as two photos of the demo agree with their truth (tests/demo): one per cent.
    CHECK(std::abs(lengthOfP1(again.out) - truthOfP1()) < 0.01 * truthOfP1());
    CHECK(std::abs(lengthOfP1(house.on({"review"}).out) - truthOfP1()) < 0.01 * truthOfP1());
    // Both readings of both photos are kept, the log has both, and the box file is kept for the next look.
    CHECK(linesOf(house.on({"list", "measure"}).out) == 1 + 4);
    const std::string log = house.on({"log"}).out;
    CHECK(has(log, "K2  corrected measure 1: standard length 7"));
    CHECK(has(log, "-> measure 3, standard length 6"));
    CHECK(has(log, "box_name: another box -> box_name: bench box"));
    CHECK(std::filesystem::exists(house.scratch / "house/calibration/bench-box.json"));
    CHECK(house.on({"verify"}).status == 0);

    // Without a box file it is that of the session now; what reads as before is not stored once more.
    const Ran third = house.on({"measure-again", "1"});
    CHECK(third.status == 0);
    CHECK(has(third.out, "Measures: replaced 0, added 0, as before 2"));
    CHECK_FALSE(has(third.out, "In the log"));
    CHECK(linesOf(house.on({"list", "measure"}).out) == 1 + 4);
}

TEST_CASE("what measuring again changed is taken back line by line") {
    const House house;
    house.addP1();
    const double before = lengthOfP1(house.session(house.wrongBox("wrong.json", "another box", 1.1)).out);
    const Ran again = house.on({"measure-again", "1", "--box", samples::box()});
    REQUIRE(has(again.out, "In the log: changes 3 to 5; to take one back: ringrule undo NUMBER\n"));
    for (const char* change : {"5", "4", "3"}) CHECK(house.on({"undo", change}).status == 0);
    CHECK(lengthOfP1(house.on({"review"}).out) == Approx(before).margin(0.051));  // printed to a tenth
    CHECK(has(house.on({"list", "session"}).out, ",another box,"));
}

TEST_CASE("measuring again gives measures to an animal that was added after the session") {
    const House house;
    const Ran unknown = house.session(samples::box());
    REQUIRE(unknown.status == 1);
    CHECK(has(unknown.out, "No animal of this collection was measured."));
    house.addP1();
    const Ran again = house.on({"measure-again", "1"});
    CHECK(again.status == 0);
    CHECK(has(again.out, "given to an animal by card 2"));
    CHECK(std::abs(lengthOfP1(again.out) - truthOfP1()) < 0.01 * truthOfP1());
    CHECK(linesOf(house.on({"list", "measure", "animal=P1"}).out) >= 1 + 2);
    CHECK(has(house.on({"log"}).out, "assigned measure 1: P1"));
}

TEST_CASE("photos in which the wrong box saw no plate are measured for the first time") {
    const House house;
    house.addP1();
    const Ran wrong = house.session(house.wrongBox("wrong.json", "another box", 1.0, 40));
    REQUIRE(wrong.status == 1);
    REQUIRE(has(wrong.out, "measured 0, not measured 2"));
    const Ran again = house.on({"measure-again", "1", "--box", samples::box()});
    CHECK(again.status == 0);
    CHECK(has(again.out, "Measures: replaced 0, added 2"));
    CHECK(std::abs(lengthOfP1(again.out) - truthOfP1()) < 0.01 * truthOfP1());
}

TEST_CASE("measuring again refuses, with nothing changed, what would empty the session or cannot be told") {
    const House house;
    house.addP1();
    REQUIRE(house.session(samples::box()).status == 0);
    const std::string before = house.on({"list", "measure"}).out;
    const Ran nothing = house.on({"measure-again", "1", "--box", house.wrongBox("none.json", "other", 1.0, 40)});
    CHECK(nothing.status == 2);
    CHECK(has(nothing.err, "not one animal of this session can be measured with the box \"other\""));
    CHECK(linesOf(nothing.err) == 1);
    const Ran none = house.on({"measure-again", "9"});
    CHECK(none.status == 2);
    CHECK(has(none.err, "there is no session 9 in this collection"));
    CHECK(house.on({"list", "measure"}).out == before);
    // Two files of one box: which was meant is not guessed.
    const std::string changed = house.wrongBox("bench-box.json", "bench box", 1.02);
    REQUIRE(house.on({"measure-again", "1", "--box", changed}).status == 0);
    const Ran which = house.on({"measure-again", "1"});
    CHECK(which.status == 2);
    CHECK(has(which.err, "several files of the box \"bench box\""));
    std::filesystem::remove(house.scratch / "house/calibration/bench-box.json");
    std::filesystem::remove(house.scratch / "house/calibration/bench-box-2.json");
    CHECK(has(house.on({"measure-again", "1"}).err, "the collection keeps no file of the box \"bench box\""));
    CHECK(house.on({"measure-again"}).status == 2);
    CHECK(has(ringrule({"measure-again", "--help"}).out, "--corrected-too"));
}
