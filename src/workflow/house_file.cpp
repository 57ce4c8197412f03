// SPDX-License-Identifier: GPL-3.0-or-later
#include "workflow/house_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "ringrule/error.h"
#include "ringrule/husbandry/spells.h"
#include "workflow/json_object.h"

namespace ringrule {
namespace {

constexpr const char* kFormat = "ringrule-house/1";

nlohmann::json parseFile(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in || std::filesystem::is_directory(path)) {
        throw Error(ErrorKind::BadData, "the house file cannot be opened", path.string());
    }
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    auto json = nlohmann::json::parse(text, nullptr, false);
    if (json.is_discarded()) throw Error(ErrorKind::BadData, "the house file is not valid JSON", path.string());
    return json;
}

Sex readSex(const JsonObject& object) {
    const std::string name = object.textIfAny("sex").value_or("unknown");
    if (name == "female") return Sex::Female;
    if (name == "male") return Sex::Male;
    if (name != "unknown") object.fail("sex", R"(must be "female", "male" or "unknown")");
    return Sex::Unknown;
}

Animal readAnimal(const JsonObject& object) {
    object.allowOnly({"code", "name", "species", "shape", "sex", "hatched_on", "hatched_exact", "hatched_sd_days",
                      "arrived_on", "card"});
    Animal animal;
    animal.code = object.text("code");
    animal.name = object.textIfAny("name").value_or("");
    animal.species = object.text("species");
    animal.shape = object.text("shape");
    if (animal.shape != "pipefish" && animal.shape != "seahorse" && animal.shape != "fish") {
        object.fail("shape", R"(must be "pipefish", "seahorse" or "fish")");
    }
    animal.sex = readSex(object);
    animal.hatchedOn = object.dateIfAny("hatched_on");
    animal.hatchedExactly = object.yesNoIfAny("hatched_exact").value_or(false);
    animal.hatchedSdDays = object.numberIfAny("hatched_sd_days").value_or(0.0);
    animal.arrivedOn = object.dateIfAny("arrived_on");
    animal.card = object.wholeNumberIfAny("card");
    return animal;
}

Diet readDiet(const JsonObject& object) {
    object.allowOnly({"code", "name", "foods", "feeds_per_day"});
    return {{},
            object.text("code"),
            object.text("name"),
            object.texts("foods"),
            object.numberIfAny("feeds_per_day").value_or(0.0)};
}

/// Throws unless `code` is the code of one of `known`.
template <class Coded>
void mustBeKnown(const JsonObject& object, const char* field, const std::string& code,
                 const std::vector<Coded>& known) {
    const bool found = std::any_of(known.begin(), known.end(), [&](const Coded& one) { return one.code == code; });
    if (!found) object.fail(field, "names \"" + code + "\", which the file does not have");
}

template <class Coded>
void mustDiffer(const JsonObject& object, const std::vector<Coded>& all) {
    for (std::size_t i = 1; i < all.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (all[i].code == all[j].code) object.fail("code", "\"" + all[i].code + "\" is there twice");
        }
    }
}

House::Spell readSpell(const JsonObject& object, const char* of, const House& house) {
    object.allowOnly({"animal", of, "from", "to"});
    House::Spell spell{object.text("animal"), object.text(of), object.date("from"), object.dateIfAny("to")};
    mustBeKnown(object, "animal", spell.animal, house.animals);
    if (spell.to && *spell.to < spell.from) object.fail("to", R"(lies before "from")");
    return spell;
}

/// Throws when the last of `spells` shares days with an earlier one of its animal; the day of a move may be in both.
void mustNotOverlap(const JsonObject& object, const std::vector<House::Spell>& spells) {
    const House::Spell& last = spells.back();
    for (const House::Spell& other : spells) {
        if (&other == &last || other.animal != last.animal ||
            sharedDays({last.from, last.to}, {other.from, other.to}) == std::chrono::days{0})
            continue;
        object.fail("from", "of \"" + last.of + "\" lies in the time in which \"" + last.animal + "\" has \"" +
                                other.of + "\" already (" + spellText({other.from, other.to}) +
                                "); end that on the day this one begins");
    }
}

void readSpells(const JsonObject& top, House& house) {
    for (const JsonObject& object : top.objects("stays")) {
        house.stays.push_back(readSpell(object, "tank", house));
        mustBeKnown(object, "tank", house.stays.back().of, house.tanks);
        mustNotOverlap(object, house.stays);
    }
    for (const JsonObject& object : top.objects("diet_spells")) {
        house.dietSpells.push_back(readSpell(object, "diet", house));
        mustBeKnown(object, "diet", house.dietSpells.back().of, house.diets);
        mustNotOverlap(object, house.dietSpells);
    }
    for (const JsonObject& object : top.objects("states")) house.states.push_back(readSpell(object, "state", house));
    for (const JsonObject& object : top.objects("notes")) {
        object.allowOnly({"animal", "on", "text"});
        house.notes.push_back({object.text("animal"), object.date("on"), object.text("text")});
        mustBeKnown(object, "animal", house.notes.back().animal, house.animals);
    }
}

House::SessionLine readSession(const JsonObject& object, const House& house, const std::filesystem::path& beside) {
    object.allowOnly({"on", "keeper", "folder", "box", "to_look_at"});
    House::SessionLine session{object.date("on"), object.text("keeper"), beside / object.text("folder"),
                               object.text("box"), object.textIfAny("to_look_at").value_or("")};
    if (!session.toLookAt.empty()) mustBeKnown(object, "to_look_at", session.toLookAt, house.tanks);
    if (std::find(house.keepers.begin(), house.keepers.end(), session.keeper) == house.keepers.end()) {
        object.fail("keeper", "names \"" + session.keeper + "\", who is not among \"keepers\"");
    }
    if (!std::filesystem::is_directory(session.folder)) {
        object.fail("folder", "names \"" + session.folder.string() + "\", which is not a folder");
    }
    return session;
}

}  // namespace

House readHouse(const std::filesystem::path& path) {
    const nlohmann::json json = parseFile(path);
    const JsonObject top(json, path.string(), "");
    if (const std::string format = top.text("format"); format != kFormat) {
        top.fail("format", "is \"" + format + "\"; this Ringrule reads \"" + kFormat + "\"");
    }
    top.allowOnly({"format", "house", "keepers", "tanks", "diets", "animals", "stays", "diet_spells", "states", "notes",
                   "sessions"});
    House house;
    house.name = top.text("house");
    house.keepers = top.texts("keepers");
    for (const JsonObject& object : top.objects("tanks")) {
        object.allowOnly({"code", "name"});
        house.tanks.push_back({{}, object.text("code"), object.text("name")});
    }
    for (const JsonObject& object : top.objects("diets")) house.diets.push_back(readDiet(object));
    for (const JsonObject& object : top.objects("animals")) house.animals.push_back(readAnimal(object));
    mustDiffer(top, house.tanks);
    mustDiffer(top, house.diets);
    mustDiffer(top, house.animals);
    readSpells(top, house);
    for (const JsonObject& object : top.objects("sessions")) {
        house.sessions.push_back(readSession(object, house, path.parent_path()));
    }
    return house;
}

}  // namespace ringrule
