// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/species_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "ringrule/error.h"
#include "workflow/json_object.h"
#include "workflow/shipped_species.h"

namespace ringrule {
namespace {

constexpr const char* kSpeciesFormat = "ringrule-species/1";

double number(const JsonObject& object, const char* field) {
    const auto value = object.numberIfAny(field);
    if (!value) object.fail(field, "is missing; it must be a number");
    return *value;
}

SpeciesMilestone readMilestone(const JsonObject& object) {
    object.allowOnly({"name", "length_mm", "age_days", "source"});
    SpeciesMilestone milestone{object.text("name"), object.numberIfAny("length_mm"), object.numberIfAny("age_days"),
                               object.text("source")};
    if (milestone.lengthMm.has_value() == milestone.ageDays.has_value())
        object.fail("length_mm", R"(or "age_days" must be there, one of the two)");
    return milestone;
}

std::vector<SpeciesMilestone> readMilestones(const JsonObject& object, const char* field) {
    std::vector<SpeciesMilestone> milestones;
    for (const JsonObject& one : object.objects(field)) {
        milestones.push_back(readMilestone(one));
        const auto& name = milestones.back().name;
        const auto same = std::count_if(milestones.begin(), milestones.end(),
                                        [&](const SpeciesMilestone& other) { return other.name == name; });
        if (same > 1) one.fail("name", "\"" + name + "\" is there twice");
    }
    return milestones;
}

UsualRange readUsual(const JsonObject& object) {
    object.allowOnly({"what", "unit", "low", "high", "source"});
    UsualRange range{object.text("what"), object.text("unit"), number(object, "low"), number(object, "high"),
                     object.text("source")};
    if (range.low > range.high) object.fail("low", "is above \"high\"");
    return range;
}

LengthWeight readLengthWeight(const JsonObject& object) {
    object.allowOnly({"a", "b", "source"});
    LengthWeight law{number(object, "a"), number(object, "b"), object.text("source")};
    if (law.a <= 0.0) object.fail("a", "must be above zero");
    if (law.b < 2.0 || law.b > 4.5) object.fail("b", "must be from 2 to 4.5, with the length in millimetres");
    return law;
}

GrowthReference readGrowth(const JsonObject& object) {
    object.allowOnly({"from_days", "to_days", "mm_per_day", "low_mm_per_day", "sex", "source"});
    GrowthReference growth{number(object, "from_days"),          number(object, "to_days"),
                           number(object, "mm_per_day"),         number(object, "low_mm_per_day"),
                           object.textIfAny("sex").value_or(""), object.text("source")};
    if (growth.fromDays < 0.0 || growth.toDays <= growth.fromDays) object.fail("to_days", "must be above from_days");
    if (growth.lowMmPerDay <= 0.0 || growth.lowMmPerDay > growth.mmPerDay)
        object.fail("low_mm_per_day", "must be above zero and not above mm_per_day");
    if (!growth.sex.empty() && growth.sex != "female" && growth.sex != "male")
        object.fail("sex", R"(must be "female" or "male", or be left out)");
    return growth;
}

/// Sets the thresholds of `object` in `options` and remembers why.
void readThresholds(const JsonObject& object, const std::string& species, JudgeOptions& options, SpeciesFile& file) {
    for (const JsonObject& one : object.objects("thresholds")) {
        one.allowOnly({"name", "value", "source"});
        const SetThreshold set{species, one.text("name"), number(one, "value"), one.text("source")};
        const bool twice = std::any_of(file.set.begin(), file.set.end(), [&](const SetThreshold& other) {
            return other.species == species && other.name == set.name;
        });
        if (twice) one.fail("name", "\"" + set.name + "\" is set twice");
        if (const auto wrong = setThreshold(options, set.name, set.value))
            one.fail("name", "\"" + set.name + "\" " + *wrong);
        file.set.push_back(set);
    }
}

SpeciesFacts readSpecies(const JsonObject& object, const nlohmann::json& json, const std::string& path,
                         const std::string& place, SpeciesFile& file) {
    object.allowOnly({"name", "protocol", "milestones", "usual", "length_weight", "growth", "thresholds"});
    SpeciesFacts facts;
    facts.species = object.text("name");
    facts.protocol = object.textIfAny("protocol").value_or("");
    if (!facts.protocol.empty() && facts.protocol != "lourie-1999" && facts.protocol != "dawson-1985")
        object.fail("protocol", R"(must be "lourie-1999" (seahorses) or "dawson-1985" (pipefish))");
    if (std::any_of(file.facts.begin(), file.facts.end(),
                    [&](const SpeciesFacts& other) { return other.species == facts.species; }))
        object.fail("name", "\"" + facts.species + "\" is there twice");
    facts.milestones = readMilestones(object, "milestones");
    for (const JsonObject& usual : object.objects("usual")) facts.usual.push_back(readUsual(usual));
    for (const JsonObject& growth : object.objects("growth")) facts.growth.push_back(readGrowth(growth));
    if (const auto law = json.find("length_weight"); law != json.end() && !law->is_null())
        facts.lengthWeight = readLengthWeight({*law, path, place + ".length_weight"});
    if (const auto own = json.find("thresholds"); own != json.end() && !own->is_null()) {
        JudgeOptions options = file.rules.usual;
        readThresholds(object, facts.species, options, file);
        file.rules.bySpecies.emplace(facts.species, options);
    }
    return facts;
}

SpeciesFile parse(const std::string& text, const std::string& path) {
    const auto json = nlohmann::json::parse(text, nullptr, false);
    if (json.is_discarded())
        throw Error(ErrorKind::BadData, "the species file is not valid JSON; look for a missing comma or bracket",
                    path);
    const JsonObject root(json, path, "");
    root.allowOnly({"format", "thresholds", "usual_milestones", "species"});
    if (root.text("format") != kSpeciesFormat) root.fail("format", std::string("must be \"") + kSpeciesFormat + "\"");
    SpeciesFile file;
    file.from = path;
    readThresholds(root, "", file.rules.usual, file);
    SpeciesFacts usual;
    usual.milestones = readMilestones(root, "usual_milestones");
    file.facts.push_back(std::move(usual));
    const auto species = root.objects("species");
    for (std::size_t i = 0; i < species.size(); ++i) {
        const std::string place = "species[" + std::to_string(i) + "]";
        file.facts.push_back(readSpecies(species[i], json["species"][i], path, place, file));
    }
    return file;
}

}  // namespace

SpeciesFile readSpeciesFile(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in || std::filesystem::is_directory(path))
        throw Error(ErrorKind::BadData, "the species file cannot be opened", path.string());
    return parse({std::istreambuf_iterator<char>(in), {}}, path.string());
}

std::string shippedSpeciesText() {
    return kShippedSpecies;
}

SpeciesFile shippedSpecies() {
    return parse(kShippedSpecies, "shipped with Ringrule");
}

SpeciesFile speciesOfCollection(const std::filesystem::path& folder) {
    const auto own = folder / "species.json";
    return std::filesystem::exists(own) ? readSpeciesFile(own) : shippedSpecies();
}

}  // namespace ringrule
