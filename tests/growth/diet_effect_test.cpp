// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/diet_effect.h"

#include <catch2/catch.hpp>

#include "ringrule/statistics/distributions.h"
#include "simulated_growth.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

DietEffectOptions quick() {
    DietEffectOptions options;
    options.permutation = {.exactUpTo = 5000, .draws = 999, .seed = 1};
    return options;
}

struct DietCoverage {
    int trials = 0;
    int covered = 0;
    int found = 0;  ///< permutation p at or below 0.05
    int boundary = 0;
};

DietCoverage dietCoverage(const GrowthTruth& truth, double effect, int perTank, double tankSd, int trials,
                          std::uint64_t seed) {
    DietCoverage seen;
    for (int i = 0; i < trials; ++i) {
        const auto animals = simulatedDiets(truth, effect, perTank, tankSd, seed + static_cast<std::uint64_t>(i));
        DietEffectOptions options = quick();
        options.unit = EffectUnit::MmPerDay;
        const auto effects = compareDietEffects(animals, options);
        REQUIRE(effects.ok());
        const DietEffect& pair = effects.value().pairs.front();
        REQUIRE(pair.difference.has_value());
        ++seen.trials;
        seen.covered += pair.difference->lower95 <= effect && effect <= pair.difference->upper95 ? 1 : 0;
        seen.found += pair.permutation && pair.permutation->pTwoSided <= 0.05 ? 1 : 0;
        seen.boundary += effects.value().fit.boundary ? 1 : 0;
    }
    return seen;
}

void checkCoverage(const DietCoverage& seen) {
    const auto wilson = wilsonInterval(seen.covered, seen.trials);
    INFO(seen.covered << " of " << seen.trials);
    CHECK(wilson.upper > 0.93);
    CHECK(wilson.lower < 0.97);
}

std::string reasonOf(const std::vector<DietAnimal>& animals) {
    const auto effects = compareDietEffects(animals);
    return effects ? "" : effects.refusal().reason;
}

}  // namespace

TEST_CASE("The interval of a diet's effect covers the truth; no effect is found by chance one time in twenty") {
    const DietCoverage some = dietCoverage({.animals = 8}, 0.05, 0, 0.0, 300, 100);
    checkCoverage(some);
    const DietCoverage none = dietCoverage({.animals = 8}, 0.0, 0, 0.0, 300, 9000);
    checkCoverage(none);
    // Exact permutation of four against four: at most 2 of 70 splits are 5 % or less, 2/70 = 2.9 %.
    CHECK(wilsonInterval(none.found, none.trials).lower < 0.05);
    CHECK(some.found > none.found);
}

TEST_CASE("Whole tanks: the interval covers the truth although tanks differ") {
    const GrowthTruth truth{.animals = 24};
    const DietCoverage tanks = dietCoverage(truth, 0.05, 4, 0.03, 300, 500);
    checkCoverage(tanks);
    const auto effects = compareDietEffects(simulatedDiets(truth, 0.05, 4, 0.03, 1), quick());
    REQUIRE(effects.ok());
    CHECK(effects.value().tanksAreUnits);
    CHECK(effects.value().pairs.front().permutation->splits == 20);  // six tanks, three a diet
    CHECK(effects.value().pairs.front().difference->degreesOfFreedom == 4.0);
    REQUIRE_FALSE(effects.value().cautions.empty());
    const EnoughToTell& enough = effects.value().pairs.front().enough;
    CHECK(enough.permutationCannot);  // 2/20
    // What is too few to tell anything is never named as enough: four against four give 2/70 at least.
    REQUIRE(enough.unitsPerDiet.has_value());
    CHECK(*enough.unitsPerDiet >= 4);
    const auto plain = compareDietEffects(simulatedDiets({.animals = 6}, 0.4, 0, 0.0, 1), quick());
    REQUIRE(plain.ok());
    REQUIRE(plain.value().pairs.front().enough.permutationCannot);
    CHECK(plain.value().pairs.front().enough.unitsPerDiet == 4);
}

namespace {

/// One row of docs/growth.md, with and without an effect of 0.05 mm a day. Coverage must be compatible with 93 to 97 %,
/// as for every interval; an effect that is not there is found one time in twenty or less, the level of the test, but
/// for four standard errors of so many trials.
void checkDesign(const std::string& what, const GrowthTruth& truth, int perTank, double tankSd, std::uint64_t seed) {
    const DietCoverage some = dietCoverage(truth, 0.05, perTank, tankSd, 2000, seed);
    const DietCoverage none = dietCoverage(truth, 0.0, perTank, tankSd, 2000, seed + 40000);
    const auto percent = [](int part) { return 100.0 * part / 2000.0; };
    WARN(what << ": interval covers " << percent(some.covered) << " and " << percent(none.covered) << " %, boundary "
              << percent(some.boundary) << " %, effect found " << percent(some.found) << " %, found without effect "
              << percent(none.found) << " %");
    checkCoverage(some);
    checkCoverage(none);
    CHECK(none.found <= none.trials * (0.05 + 4.0 * std::sqrt(0.05 * 0.95 / none.trials)));
    CHECK(some.found >= none.found);
}

}  // namespace

TEST_CASE("Coverage of a diet's effect over designs", "[.deep]") {
    for (const int animals : {6, 8, 12, 24}) {
        for (const int sessions : {3, 6, 12}) {
            // 130 mm in the middle: at 100 mm one in a million would start twelve months with a length below zero.
            checkDesign(std::to_string(animals) + " animals, " + std::to_string(sessions) + " sessions",
                        {.animals = animals, .sessions = sessions, .lengthMm = 130.0}, 0, 0.0, 40000);
        }
    }
    for (const double tankSd : {0.0, 0.03}) {
        checkDesign("8 tanks of 4, spread between tanks " + std::to_string(tankSd), {.animals = 32}, 4, tankSd, 120000);
    }
}

TEST_CASE("Balanced animals: the permutation is that of their own slopes, and the model's test that of slopes") {
    const auto animals = simulatedDiets({.animals = 9}, 0.1, 0, 0.0, 42);
    DietEffectOptions options = quick();
    options.unit = EffectUnit::MmPerDay;
    const auto effects = compareDietEffects(animals, options);
    REQUIRE(effects.ok());
    std::vector<double> slopes[2];
    for (const DietAnimal& animal : animals) {
        double slope = 0.0;
        for (const DayLength& one : animal.lengths) {
            slope += (one.day - 75.0) * one.lengthMm / 15750.0;
        }
        slopes[animal.diet - 10].push_back(slope);
    }
    const auto permuted = permutationTest(slopes[0], slopes[1]);
    const DietEffect& pair = effects.value().pairs.front();
    REQUIRE(pair.permutation.has_value());
    CHECK(pair.permutation->exact);
    CHECK(pair.permutation->splits == permuted.splits);
    CHECK(pair.permutation->asExtreme == permuted.asExtreme);
    double means[2]{};
    double squares = 0.0;
    for (int d : {0, 1}) {
        for (double one : slopes[d]) {
            means[d] += one / static_cast<double>(slopes[d].size());
        }
        for (double one : slopes[d]) {
            squares += (one - means[d]) * (one - means[d]);
        }
    }
    CHECK_THAT(pair.difference->value, WithinAbs(means[1] - means[0], 1e-9));
    CHECK_THAT(pair.difference->standardError, WithinRel(std::sqrt(squares / 7.0 * (1.0 / 5.0 + 1.0 / 4.0)), 1e-6));
    CHECK_THAT(pair.difference->degreesOfFreedom, WithinRel(7.0, 1e-5));
}

TEST_CASE("Several tanks with both diets each: animals are exchanged within their tank") {
    std::vector<DietAnimal> animals = simulatedDiets({.animals = 16}, 0.1, 0, 0.0, 5);
    for (std::size_t i = 0; i < animals.size(); ++i) {
        animals[i].tank = static_cast<std::int64_t>(i / 8);
        for (DayLength& one : animals[i].lengths) {
            one.lengthMm += 0.5 * static_cast<double>(animals[i].tank) * one.day;  // a warm tank
        }
    }
    const auto effects = compareDietEffects(animals, quick());
    REQUIRE(effects.ok());
    CHECK_FALSE(effects.value().tanksAreUnits);
    const DietEffect& pair = effects.value().pairs.front();
    CHECK(pair.permutation->splits == 4900);
    CHECK_THAT(pair.difference->value, WithinAbs(0.1, 4.0 * pair.difference->standardError));
    CHECK(pair.difference->standardError < 0.05);  // the tanks' difference of 0.5 is not in it
}

TEST_CASE("Too few to tell says what would be enough; enough to tell says so") {
    const auto few = compareDietEffects(simulatedDiets({.animals = 4, .mmPerDaySd = 0.08}, 0.02, 0, 0.0, 9), quick());
    REQUIRE(few.ok());
    const DietEffect& weak = few.value().pairs.front();
    CHECK(weak.verdict == DietVerdict::TooFewToTell);
    CHECK(weak.enough.permutationCannot);
    REQUIRE(weak.enough.unitsPerDiet.has_value());
    // The power of the t test with that many is enough, with one fewer it is not.
    const double variance = weak.difference->standardError * weak.difference->standardError;  // two against two: s²
    for (const int less : {0, 1}) {
        const double n = *weak.enough.unitsPerDiet - less;
        const double power = studentPower(weak.enough.difference / std::sqrt(variance * 2.0 / n), 2.0 * n - 2.0);
        CHECK((power >= 0.8) == (less == 0));
    }
    CHECK(weak.sentence.find("Too few to tell") != std::string::npos);
    const auto many = compareDietEffects(simulatedDiets({.animals = 20}, 0.12, 0, 0.0, 9), quick());
    REQUIRE(many.ok());
    CHECK(many.value().pairs.front().verdict == DietVerdict::Differ);
    const auto same = compareDietEffects(simulatedDiets({.animals = 40}, 0.0, 0, 0.0, 10), quick());
    REQUIRE(same.ok());
    CHECK(same.value().pairs.front().verdict == DietVerdict::Alike);
}

TEST_CASE("One tank on each diet: no interval, and the sentence says what is missing") {
    const auto effects = compareDietEffects(simulatedDiets({.animals = 6}, 0.05, 3, 0.0, 4), quick());
    REQUIRE(effects.ok());
    CHECK(effects.value().tanksAreUnits);
    const DietEffect& pair = effects.value().pairs.front();
    CHECK_FALSE(pair.difference.has_value());
    CHECK(pair.verdict == DietVerdict::TooFewToTell);
    CHECK(pair.sentence.find("given in a single tank") != std::string::npos);
    CHECK(pair.sentence.find("nan") == std::string::npos);
}

TEST_CASE("Three diets: every pair, adjusted together, and one test of all") {
    auto animals = simulatedDiets({.animals = 18}, 0.1, 0, 0.0, 31);
    for (std::size_t i = 0; i < animals.size(); i += 3) {
        animals[i].diet = 12;
    }
    const auto effects = compareDietEffects(animals, quick());
    REQUIRE(effects.ok());
    CHECK(effects.value().groups.size() == 3);
    REQUIRE(effects.value().pairs.size() == 3);
    REQUIRE(effects.value().overall.has_value());
    CHECK(effects.value().overall->numerator == 2.0);
    for (const DietEffect& pair : effects.value().pairs) {
        CHECK(pair.adjustedP >= pair.permutation->pTwoSided);
    }
}

TEST_CASE("A comparison that cannot be made is refused, with the reason") {
    const auto good = simulatedDiets({}, 0.1, 0, 0.0, 3);
    CHECK(reasonOf(good).empty());
    CHECK(reasonOf({}) == "too-few-groups");
    auto oneDiet = good;
    for (DietAnimal& animal : oneDiet) {
        animal.diet = 10;
    }
    CHECK(reasonOf(oneDiet) == "too-few-groups");
    auto twice = good;
    twice.push_back(good.front());
    twice.back().tank = 5;
    CHECK(reasonOf(twice) == "animal-in-two-tanks");
    twice.back().tank = good.front().tank;
    twice.back().diet = 11;
    CHECK(reasonOf(twice) == "animal-on-two-diets");
    auto negative = good;
    negative[2].lengths[1].lengthMm = -4.0;
    CHECK(reasonOf(negative) == "no-length");
    auto early = good;
    early[2].lengths[1].day = -4.0;
    CHECK(reasonOf(early) == "dates-reversed");
    auto once = good;
    for (DietAnimal& animal : once) {
        if (animal.diet == 11) {
            animal.lengths.resize(1);
        }
    }
    CHECK(reasonOf(once) == "too-few-points");
    auto sameDay = good;
    for (DietAnimal& animal : sameDay) {
        for (DayLength& one : animal.lengths) {
            one.day = 0.0;
        }
    }
    CHECK(reasonOf(sameDay) == "too-few-points");
}
