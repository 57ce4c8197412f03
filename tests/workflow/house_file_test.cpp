// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "ringrule/error.h"
#include "workflow/house_file.h"

using namespace ringrule;
using Json = nlohmann::json;

namespace {

Json goodHouse() {
    return Json::parse(R"({
        "format": "ringrule-house/1", "house": "Lantern Quay Fish House", "keepers": ["K1", "K2"],
        "tanks": [{"code": "B3", "name": "Bay 3"}],
        "diets": [{"code": "D1", "name": "mixed", "foods": ["mysids", "copepods"], "feeds_per_day": 3}],
        "animals": [
            {"code": "P1", "species": "Syngnathus typhle", "shape": "pipefish", "sex": "male",
             "hatched_on": "2030-11-15", "hatched_exact": true, "card": 1},
            {"code": "H1", "name": "Old one", "species": "Hippocampus reidi", "shape": "seahorse", "sex": "female",
             "hatched_on": null, "hatched_exact": false, "card": null}],
        "stays": [{"animal": "P1", "tank": "B3", "from": "2030-12-20", "to": null}],
        "diet_spells": [{"animal": "P1", "diet": "D1", "from": "2030-12-20", "to": "2031-02-01"}],
        "states": [{"animal": "H1", "state": "brooding", "from": "2031-05-01", "to": "2031-05-16"}],
        "notes": [{"animal": "P1", "on": "2031-01-07", "text": "Eats well."}],
        "sessions": [{"on": "2031-01-06", "keeper": "K1", "folder": "2031-01-06", "box": "bench-box.json"}]
    })");
}

/// The message with which `house` is refused; empty when it is not.
std::string refusalOf(const Json& house) {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "2031-01-06");
    const auto file = scratch.write("house.json", house.dump());
    try {
        static_cast<void>(readHouse(file));
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadData);
        CHECK(error.path() == file.string());
        return error.what();
    }
    return {};
}

struct Fault {
    const char* pointer;  ///< where (JSON pointer)
    Json value;           ///< put there; discarded: the field is taken out
    const char* says;     ///< what the message must name
};

}  // namespace

TEST_CASE("a house file is read whole") {
    const ScratchFolder scratch;
    std::filesystem::create_directories(scratch / "2031-01-06");
    const House house = readHouse(scratch.write("house.json", goodHouse().dump()));
    CHECK(house.name == "Lantern Quay Fish House");
    REQUIRE(house.animals.size() == 2);
    CHECK(house.animals[0].sex == Sex::Male);
    CHECK(house.animals[0].hatchedExactly);
    CHECK(house.animals[0].card == 1);
    CHECK(house.animals[1].name == "Old one");
    CHECK_FALSE(house.animals[1].hatchedOn.has_value());
    CHECK_FALSE(house.animals[1].card.has_value());
    CHECK(house.diets.at(0).foods == std::vector<std::string>{"mysids", "copepods"});
    CHECK_FALSE(house.stays.at(0).to.has_value());
    CHECK(formatDate(*house.dietSpells.at(0).to) == "2031-02-01");
    CHECK(house.states.at(0).of == "brooding");
    CHECK(house.sessions.at(0).folder == scratch / "2031-01-06");
    CHECK(house.sessions.at(0).box == "bench-box.json");
}

TEST_CASE("each fault of a house file is told by the field's name") {
    const Json gone(Json::value_t::discarded);
    const auto fault = GENERATE_COPY(values<Fault>({
        {"/format", "ringrule-house/2", "\"format\" is \"ringrule-house/2\""},
        {"/format", gone, "\"format\" is missing"},
        {"/house", gone, "\"house\" is missing"},
        {"/animls", Json::array(), "\"animls\" is not a field"},
        {"/animals/0/code", gone, "\"animals[0].code\" is missing"},
        {"/animals/1/code", "P1", "\"P1\" is there twice"},
        {"/animals/0/shape", "eel", "\"animals[0].shape\" must be"},
        {"/animals/0/sex", "boy", "\"animals[0].sex\" must be"},
        {"/animals/0/hatched_on", "2030-02-30", "\"animals[0].hatched_on\" must be a day"},
        {"/animals/0/hatched_exact", "yes", "\"animals[0].hatched_exact\" must be true or false"},
        {"/animals/0/card", -1, "\"animals[0].card\" must be a whole number"},
        {"/animals/0/card", "1", "\"animals[0].card\" must be a whole number"},
        {"/animals/0/colour", "green", "\"animals[0].colour\" is not a field"},
        {"/animals", 3, "\"animals\" must be a list"},
        {"/animals/0", 3, "\"animals[0]\" must be an object"},
        {"/diets/0/foods", "mysids", "\"diets[0].foods\" must be a list"},
        {"/diets/0/feeds_per_day", -2, "\"diets[0].feeds_per_day\" must be a number"},
        {"/stays/0/tank", "B9", "\"stays[0].tank\" names \"B9\""},
        {"/stays/0/animal", "P9", "\"stays[0].animal\" names \"P9\""},
        {"/stays/0/to", "2030-12-01", "\"stays[0].to\" lies before"},
        {"/stays/1", Json::parse(R"({"animal": "P1", "tank": "B3", "from": "2031-02-01"})"),
         "\"stays[1].from\" of \"B3\" lies in the time in which \"P1\" has \"B3\" already (from 2030-12-20 on)"},
        {"/diet_spells/1", Json::parse(R"({"animal": "P1", "diet": "D1", "from": "2031-01-31"})"),
         "\"diet_spells[1].from\" of \"D1\" lies in the time"},
        {"/diet_spells/0/diet", "D9", "\"diet_spells[0].diet\" names"},
        {"/states/0/from", gone, "\"states[0].from\" is missing"},
        {"/notes/0/text", "", "\"notes[0].text\" is missing or empty"},
        {"/sessions/0/keeper", "K9", "\"sessions[0].keeper\" names \"K9\""},
        {"/sessions/0/to_look_at", "bay-99", "\"sessions[0].to_look_at\" names"},
        {"/sessions/0/folder", "2031-09-09", "\"sessions[0].folder\" names"},
        {"/sessions/0/box", gone, "\"sessions[0].box\" is missing"},
    }));
    Json house = goodHouse();
    const Json::json_pointer pointer(fault.pointer);
    if (fault.value.is_discarded()) {
        house[pointer.parent_pointer()].erase(pointer.back());
    } else {
        house[pointer] = fault.value;
    }
    const std::string message = refusalOf(house);
    INFO(fault.pointer << " -> " << message);
    CHECK(message.find(fault.says) != std::string::npos);
    CHECK(message.find('\n') == std::string::npos);
}

TEST_CASE("a move on one day is no animal in two tanks") {
    Json house = goodHouse();
    house["stays"][0]["to"] = "2031-02-01";
    house["stays"].push_back({{"animal", "P1"}, {"tank", "B3"}, {"from", "2031-02-01"}});
    CHECK(refusalOf(house).empty());
}

TEST_CASE("what is no house file is refused") {
    const ScratchFolder scratch;
    CHECK_THROWS_AS(readHouse(scratch / "none.json"), Error);
    CHECK_THROWS_AS(readHouse(scratch.path()), Error);
    CHECK_THROWS_AS(readHouse(scratch.write("a.json", "{\"format\":")), Error);
    CHECK_THROWS_AS(readHouse(scratch.write("b.json", "[]")), Error);
}
