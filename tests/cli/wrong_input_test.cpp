// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

#include "../scratch_folder.h"
#include "run_program.h"
#include "samples.h"

// Whatever a keeper may get wrong: a clear sentence, the right status, and nothing written.

namespace {

const std::string kGood = samples::photo("2031-01-06/P1-a_rendered.jpg");

/// Measures one file with `--overlay`, and checks that a run that measured nothing made no folder for overlays.
Ran measure(const ScratchFolder& scratch, const std::string& photo, const std::string& box = samples::box()) {
    const std::size_t before = filesIn(scratch.path());
    Ran ran = ringrule({"measure", photo, "--box", box, "--overlay", scratch / "overlays"});
    const bool measuredAny = ran.out.find("\"animal_index\":0") != std::string::npos;
    if (!measuredAny) CHECK(filesIn(scratch.path()) == before);
    return ran;
}

bool oneSentence(const std::string& err) {
    return std::count(err.begin(), err.end(), '\n') == 1 && err.size() > 30;
}

nlohmann::json goodBox() {
    std::ifstream in(samples::box());
    return nlohmann::json::parse(in);
}

}  // namespace

TEST_CASE("a blank photo: no plate, no measure, status 1") {
    const ScratchFolder scratch;
    samples::writeBlank(scratch / "blank.jpg");
    const Ran ran = measure(scratch, scratch / "blank.jpg");
    CHECK(ran.status == 1);
    REQUIRE(ran.lines().size() == 1);
    const auto line = ran.lines()[0];
    CHECK(line["reason"] == "no-plate");
    CHECK(line["measured"] == false);
    CHECK(line["animal_index"].is_null());
    CHECK(line["standard_length_mm"].is_null());
    CHECK(line["sentence"].get<std::string>().size() > 20);
    CHECK(oneSentence(ran.err));
    CHECK(ran.err.find("blank.jpg") != std::string::npos);
}

TEST_CASE("no marker to be seen: no plate, status 1") {
    const ScratchFolder scratch;
    samples::writeWithoutMarkers(kGood, scratch / "covered.jpg", 0);
    const Ran ran = measure(scratch, scratch / "covered.jpg");
    CHECK(ran.status == 1);
    CHECK(ran.lines().at(0)["reason"] == "no-plate");
    CHECK(oneSentence(ran.err));
}

TEST_CASE("half the markers: said, and either a fair measure or none") {
    const ScratchFolder scratch;
    samples::writeWithoutMarkers(kGood, scratch / "half.jpg", 4);
    const Ran ran = measure(scratch, scratch / "half.jpg");
    CHECK(ran.err.find("markers") != std::string::npos);
    const auto line = ran.lines().at(0);
    if (line["measured"] == false) {
        CHECK(ran.status == 1);
        CHECK(line["reason"] == "too-few-markers");
        return;
    }
    CHECK(ran.status == 0);
    const auto& remarks = line["remarks"];
    CHECK(std::find(remarks.begin(), remarks.end(), "markers-missing") != remarks.end());
    const double truth = samples::truth("2031-01-06", "P1-a_rendered")["standard_length_mm"];
    const double u95 = line["standard_length_mm"]["u95"];
    // One and a half intervals: 99.7 %, so that the test fails for a wrong scale and not for bad luck.
    CHECK(std::abs(line["standard_length_mm"]["value"].get<double>() - truth) < std::max(1.5 * u95, 0.01 * truth));
}

TEST_CASE("a file that is no photo, a cut one, a missing one: status 1, nothing on standard output") {
    const ScratchFolder scratch;
    scratch.write("text.jpg", "This is a shopping list, not a photo.\n");
    scratch.write("empty.jpg", "");
    samples::writeTruncated(kGood, scratch / "cut.jpg");
    for (const char* name : {"text.jpg", "empty.jpg", "cut.jpg", "missing.jpg"}) {
        INFO(name);
        const Ran ran = measure(scratch, scratch / name);
        CHECK(ran.status == 1);
        CHECK(ran.out.empty());
        CHECK(oneSentence(ran.err));
        CHECK(ran.err.find(name) != std::string::npos);
    }
}

TEST_CASE("a bad photo among good ones does not keep them from being measured") {
    const ScratchFolder scratch;
    scratch.write("text.jpg", "not a photo");
    const Ran ran = ringrule({"measure", scratch / "text.jpg", kGood, "--box", samples::box(), "--jobs", "2"});
    CHECK(ran.status == 1);
    REQUIRE(ran.lines().size() == 1);
    CHECK(ran.lines()[0]["photo"] == kGood);
}

TEST_CASE("a box file that cannot be used: status 2, the field named, no photo looked at") {
    const ScratchFolder scratch;
    struct Fault {
        const char* name;
        const char* pointer;
        nlohmann::json value;  ///< discarded: taken out
        const char* says;
    };
    const nlohmann::json gone(nlohmann::json::value_t::discarded);
    const std::vector<Fault> faults{
        {"no plate", "/plate", gone, "plate"},
        {"no size", "/plate/size_mm", gone, "plate.size_mm"},
        {"no distance", "/animal_plane/distance_from_plate_mm", gone, "animal_plane.distance_from_plate_mm"},
        {"other version", "/format", "ringrule-box/9", "ringrule-box/9"},
    };
    for (const Fault& fault : faults) {
        INFO(fault.name);
        auto box = goodBox();
        const nlohmann::json::json_pointer pointer(fault.pointer);
        if (fault.value.is_discarded()) {
            box[pointer.parent_pointer()].erase(pointer.back());
        } else {
            box[pointer] = fault.value;
        }
        const Ran ran = measure(scratch, kGood, scratch.write("box.json", box.dump()));
        std::filesystem::remove(scratch / "box.json");
        CHECK(ran.status == 2);
        CHECK(ran.out.empty());
        CHECK(oneSentence(ran.err));
        CHECK(ran.err.find(fault.says) != std::string::npos);
    }
    for (const auto& box : {scratch / "none.json", scratch.path()}) {
        CHECK(ringrule({"measure", kGood, "--box", box}).status == 2);
    }
}

TEST_CASE("an empty folder: status 2, nothing written") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "empty");
    const Ran measured = ringrule({"measure", scratch / "empty", "--box", samples::box()});
    CHECK(measured.status == 2);
    CHECK(oneSentence(measured.err));
    REQUIRE(ringrule({"create", scratch / "house"}).status == 0);
    const std::string before = contentOf(scratch / "house/collection.sqlite");
    const Ran session = ringrule({"session", scratch / "empty", "--store", scratch / "house", "--box", samples::box()});
    CHECK(session.status == 2);
    CHECK(oneSentence(session.err));
    CHECK(contentOf(scratch / "house/collection.sqlite") == before);
    CHECK(filesIn(scratch / "house/photos") == 0);
    CHECK(filesIn(scratch / "house/calibration") == 0);
}

TEST_CASE("a folder of bad photos only: status 1, the collection as it was") {
    const ScratchFolder scratch;
    scratch.write("photos/a.jpg", "not a photo");
    REQUIRE(ringrule({"create", scratch / "house"}).status == 0);
    const Ran ran = ringrule({"session", scratch / "photos", "--store", scratch / "house", "--box", samples::box()});
    CHECK(ran.status == 1);
    CHECK(filesIn(scratch / "house/photos") == 0);
    CHECK(ringrule({"review", "--store", scratch / "house"}).out == "Nothing is measured in this collection yet.\n");
}

TEST_CASE("an unknown card: measured and kept, but said and given to no animal; status 1") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "photos");
    std::filesystem::copy_file(kGood, scratch / "photos/P1.jpg");
    REQUIRE(ringrule({"create", scratch / "house"}).status == 0);
    const std::vector<std::string> command{"session", scratch / "photos", "--store", scratch / "house",
                                           "--box",   samples::box()};
    const Ran ran = ringrule(command);
    CHECK(ran.status == 1);
    CHECK(ran.err.find("card 1 belongs to no animal in this collection: add the animal or correct the card") !=
          std::string::npos);
    CHECK(ran.out.starts_with("Session 2031-01-06: photos 1; measured 1, not measured 0"));
    CHECK(filesIn(scratch / "house/photos") == 1);
    // The same folder once more adds nothing.
    const Ran again = ringrule(command);
    CHECK(again.status == 2);
    CHECK(again.err.find("already in the collection") != std::string::npos);
    CHECK(filesIn(scratch / "house/photos") == 1);
}

TEST_CASE("a store that is none, a collection made twice, a house file with a fault: status 2, nothing made") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "plain");
    const Ran session =
        ringrule({"session", samples::photo("2031-01-06"), "--store", scratch / "plain", "--box", samples::box()});
    CHECK(session.status == 2);
    CHECK(filesIn(scratch / "plain") == 0);
    REQUIRE(ringrule({"create", scratch / "house"}).status == 0);
    CHECK(ringrule({"create", scratch / "house"}).status == 2);
    const auto house = scratch.write("house.json", R"({"format": "ringrule-house/1", "house": ""})");
    const Ran create = ringrule({"create", scratch / "second", "--house", house, "--calibration", scratch.path()});
    CHECK(create.status == 2);
    CHECK(create.err.find("\"house\"") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(scratch / "second"));
    const Ran demo = ringrule({"demo", "--samples", scratch.path(), "--out", scratch / "out"});
    CHECK(demo.status == 2);
    CHECK_FALSE(std::filesystem::exists(scratch / "out"));
}

TEST_CASE("a day that is none: status 2") {
    const ScratchFolder scratch;
    REQUIRE(ringrule({"create", scratch / "house"}).status == 0);
    const Ran ran = ringrule({"session", samples::photo("2031-01-06"), "--store", scratch / "house", "--box",
                              samples::box(), "--on", "6 January"});
    CHECK(ran.status == 2);
    CHECK(ran.err.find("--on") != std::string::npos);
}
