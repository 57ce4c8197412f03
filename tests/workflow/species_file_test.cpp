// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/species_file.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>

#include "../scratch_folder.h"
#include "ringrule/error.h"

using namespace ringrule;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

/// What reading a file of this text throws, or "read".
std::string complaint(const std::string& text) {
    const ScratchFolder folder;
    const auto path = folder.path() / "species.json";
    std::ofstream(path) << text;
    try {
        (void)readSpeciesFile(path);
    } catch (const Error& error) {
        CHECK(error.kind() == ErrorKind::BadData);
        return error.what();
    }
    return "read";
}

std::string withSpecies(const std::string& fields) {
    return R"({"format": "ringrule-species/1", "species": [{"name": "Hippocampus kuda")" + fields + "}]}";
}

}  // namespace

TEST_CASE("The shipped species file is read, every fact has a source, its thresholds hold") {
    const SpeciesFile shipped = shippedSpecies();
    REQUIRE(shipped.facts.size() > 3);
    for (const SpeciesFacts& facts : shipped.facts) {
        for (const auto& one : facts.milestones) CHECK_FALSE(one.source.empty());
        for (const auto& one : facts.usual) CHECK_FALSE(one.source.empty());
        for (const auto& one : facts.growth) CHECK_FALSE(one.source.empty());
    }
    for (const SetThreshold& set : shipped.set) CHECK_FALSE(set.source.empty());
    // What ships sets what the code has anyhow: a review without a file judges alike.
    for (const Threshold& threshold : thresholds()) {
        INFO(threshold.name);
        CHECK(threshold.get(shipped.rules.usual) == threshold.get(JudgeOptions{}));
    }
    const SpeciesFacts kuda = factsOf(shipped.facts, "Hippocampus kuda");
    REQUIRE(kuda.lengthWeight.has_value());
    CHECK_THAT(kuda.lengthWeight->b, WithinRel(2.76, 1e-12));  // Choo & Liew 2006
    const auto sexing = std::find_if(kuda.milestones.begin(), kuda.milestones.end(),
                                     [](const auto& one) { return one.name == "sexing"; });
    REQUIRE(sexing != kuda.milestones.end());
    CHECK(sexing->ageDays == 110.0);
    CHECK(kuda.milestones.size() == 3);  // the others are those of every species
    // Slopes 0.68 (to day 21), 1.16 (day 21 to 76), 0.71 mm a day (after): Choo & Liew 2006.
    REQUIRE(kuda.growth.size() == 3);
    CHECK(kuda.growth[1].fromDays == 21.0);
    CHECK(kuda.growth[1].mmPerDay == 1.16);
}

TEST_CASE("A collection's own species file wins over the shipped one") {
    const ScratchFolder folder;
    CHECK(speciesOfCollection(folder.path()).from == shippedSpecies().from);
    std::ofstream(folder.path() / "species.json")
        << R"({"format": "ringrule-species/1", "thresholds": [{"name": "settle_days", "value": 14, "source": "ours"}],
              "species": [{"name": "Hippocampus kuda",
                           "thresholds": [{"name": "lag_sds", "value": 4, "source": "ours"}]}]})";
    const SpeciesFile own = speciesOfCollection(folder.path());
    CHECK(own.rules.usual.group.settleDays == 14);
    CHECK(own.rules.of("Hippocampus kuda").lagging.lagSds == 4.0);
    CHECK(own.rules.of("Hippocampus kuda").group.settleDays == 14);
    CHECK(own.rules.of("Hippocampus reidi").lagging.lagSds == JudgeOptions{}.lagging.lagSds);
}

TEST_CASE("A wrong species file is refused in one line that names the place") {
    CHECK(complaint(withSpecies("")) == "read");
    CHECK_THAT(complaint("{"), Contains("not valid JSON"));
    CHECK_THAT(complaint("[]"), Contains("must be an object"));
    CHECK_THAT(complaint(R"({"format": "other/1"})"), Contains("ringrule-species/1"));
    CHECK_THAT(complaint(withSpecies(R"(, "protocl": "x")")), Contains("species[0].protocl"));
    CHECK_THAT(complaint(withSpecies(R"(, "protocol": "height")")), Contains("dawson-1985"));
    CHECK_THAT(complaint(withSpecies(R"(, "length_weight": {"a": 0, "b": 3, "source": "x"})")),
               Contains("species[0].length_weight.a"));
    CHECK_THAT(complaint(withSpecies(R"(, "length_weight": {"a": 1e-6, "b": 30, "source": "x"})")),
               Contains("2 to 4.5"));
    CHECK_THAT(complaint(withSpecies(R"(, "milestones": [{"name": "sexing", "source": "x"}])")),
               Contains("one of the two"));
    CHECK_THAT(complaint(withSpecies(R"(, "milestones": [{"name": "sexing", "age_days": 5}])")), Contains("source"));
    CHECK_THAT(complaint(withSpecies(R"(, "thresholds": [{"name": "lag_sdz", "value": 3, "source": "x"}])")),
               Contains("lag_sdz") && Contains("no threshold"));
    CHECK_THAT(complaint(withSpecies(R"(, "thresholds": [{"name": "lag_sds", "value": 0, "source": "x"}])")),
               Contains("must be from 1 to 20"));
    const std::string once = R"({"name": "lag_sds", "value": 3, "source": "x"})";
    CHECK_THAT(complaint(withSpecies(", \"thresholds\": [" + once + "," + once + "]")), Contains("set twice"));
    const auto growth = [](const std::string& rest) {
        return complaint(withSpecies(R"(, "growth": [{"from_days": 10, "source": "x", )" + rest + "}]"));
    };
    CHECK(growth(R"("to_days": 60, "mm_per_day": 1, "low_mm_per_day": 0.7)") == "read");
    CHECK_THAT(growth(R"("to_days": 10, "mm_per_day": 1, "low_mm_per_day": 0.7)"), Contains("growth[0].to_days"));
    CHECK_THAT(growth(R"("to_days": 60, "mm_per_day": 1, "low_mm_per_day": 1.7)"),
               Contains("growth[0].low_mm_per_day"));
    CHECK_THAT(growth(R"("to_days": 60, "mm_per_day": 1, "low_mm_per_day": 0.7, "sex": "hen")"), Contains("female"));
    CHECK_THAT(complaint(R"({"format": "ringrule-species/1", "species": [{"name": "A b"}, {"name": "A b"}]})"),
               Contains("there twice"));
}
