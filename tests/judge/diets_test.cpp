// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/diets.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "histories.h"
#include "ringrule/judge/tank_level.h"
#include "ringrule/judge/time_to_notice.h"
#include "ringrule/statistics/distributions.h"
#include "simulated_group.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;

namespace {

/// A group whose fourth animal slows and thins over sessions 3 to 5, changes its food after session 5 and recovers.
std::vector<AnimalHistory> changedGroup() {
    auto animals = group(7, 9);
    const double gains[] = {12, 12, 12, 4, 4, 4, 13, 13};
    const double depth[] = {1, 1, 1, 0.95, 0.90, 0.82, 0.88, 0.95, 0.98};
    double length = animals[3].observations[0].standardLengthMm.value;
    for (int n = 0; n < 9; ++n) {
        setLength(animals[3], n, length);
        animals[3].observations[static_cast<std::size_t>(n)].trunkDepthMm.value = length / 28.0 * depth[n];
        length += n < 8 ? gains[n] : 0.0;
    }
    const Date change = session(5) + days(10);
    animals[3].dietSpells = {{{4}, {1}, kHatched, change}, {{4}, {2}, change, std::nullopt}};
    return animals;
}

}  // namespace

TEST_CASE("Improved after the change while its tankmates did not") {
    const auto animals = changedGroup();
    const auto change = dietChange(animals, 3, session(8));
    REQUIRE(change.ok());
    CHECK(change.value().changedOn == session(5) + days(10));
    CHECK(change.value().from == DietId{1});
    CHECK(change.value().sessionsBefore.size() == 3);
    CHECK(change.value().sessionsAfter.size() == 3);
    const BeforeAfter& rate = change.value().rateMmPerDay;
    CHECK_THAT(rate.before.value, WithinAbs(4.0 / 30.0, 1e-9));
    CHECK_THAT(rate.after.value, WithinAbs(13.0 / 30.0, 1e-9));
    CHECK(rate.verdict == AfterChange::Improved);
    CHECK_THAT(rate.tankmatesChange.value, WithinAbs(0.0, 0.01));
    CHECK(change.value().conditionPercent.verdict == AfterChange::Improved);
    CHECK_THAT(change.value().sentence, Contains("improved after the change") &&
                                            Contains("while its tankmates' did not") &&
                                            Contains("does not prove the cause"));
}

TEST_CASE("Too early to tell until the change can exceed the error") {
    const auto animals = changedGroup();
    const auto atOnce = dietChange(animals, 3, session(5) + days(12));
    REQUIRE(atOnce.ok());
    CHECK(atOnce.value().rateMmPerDay.verdict == AfterChange::TooEarly);
    CHECK(atOnce.value().conditionPercent.verdict == AfterChange::TooEarly);
    CHECK_THAT(atOnce.value().sentence, Contains("too early to tell"));
    SECTION("a session in the first week does not count") {
        auto early = animals;
        early[3].dietSpells[0].to = session(6) - days(3);
        early[3].dietSpells[1].from = session(6) - days(3);
        const auto change = dietChange(early, 3, session(6));
        REQUIRE(change.ok());
        CHECK(change.value().sessionsAfter.empty());
    }
}

TEST_CASE("Without a change of food, or a past, nothing is compared") {
    auto animals = changedGroup();
    CHECK(dietChange(animals, 0, session(8)).refusal().reason == "no-change-of-food");
    CHECK(dietChange(animals, 3, session(4)).refusal().reason == "no-change-of-food");
    animals[3].observations.erase(animals[3].observations.begin(), animals[3].observations.begin() + 5);
    CHECK(dietChange(animals, 3, session(8)).refusal().reason == "too-few-sessions");
}

TEST_CASE("A change that did nothing is said to have improved one time in forty") {
    int improved = 0;
    const int replicates = 400;
    for (int r = 0; r < replicates; ++r) {
        auto animals = simulate({.failing = false, .seed = 40000U + static_cast<unsigned>(r)});
        animals[1].dietSpells.front().to = simulated::day(6, 16);
        animals[1].dietSpells.push_back({{2}, {9}, simulated::day(6, 16), std::nullopt});
        const auto change = dietChange(animals, 1, simulated::day(9, 1));
        REQUIRE(change.ok());
        improved += change.value().conditionPercent.verdict == AfterChange::Improved ? 1 : 0;
    }
    // A 95 % interval errs upwards 2.5 % of the time; the interval must be no narrower, and not absurdly wider.
    INFO("condition said to have improved " << improved << " of " << replicates << " times");
    CHECK(wilsonInterval(improved, replicates).lower < 0.03);
}

namespace {

/// Groups of six, photographed monthly: the first animal's food is changed on the day of the fourth session, and from
/// then on it grows at `part` of what it would have grown. `whose`: the animal whose food was changed.
std::vector<AnimalHistory> fedAnew(double part, int replicate, std::size_t whose) {
    GroupTrial trial;
    trial.failing = part == 1.0 ? Failing::Nothing : Failing::SlowerGrowth;
    trial.growthPart = part;
    trial.seed = 7;
    auto animals = simulatedGroup(trial, replicate);
    const Date changed = animals[whose].observations[3].on;
    const AnimalId id = animals[whose].animal.id;
    animals[whose].dietSpells = {{id, {1}, changed - days(90), changed}, {id, {2}, changed, std::nullopt}};
    return animals;
}

std::size_t slowestBefore(const std::vector<AnimalHistory>& animals) {
    const auto gain = [](const AnimalHistory& one) {
        return one.observations[3].standardLengthMm.value / one.observations[1].standardLengthMm.value;
    };
    return static_cast<std::size_t>(std::min_element(animals.begin(), animals.end(),
                                                     [&](const auto& a, const auto& b) { return gain(a) < gain(b); }) -
                                    animals.begin());
}

}  // namespace

TEST_CASE("After a change of food: the interval against the tankmates covers the truth") {
    // 2000 groups: the Wilson interval of the coverage is about two points wide. The variation of growth in these
    // groups is the one that the thresholds allow for.
    const int replicates = 2000;
    for (const double part : {1.0, 1.4}) {
        int covered = 0;
        int improved = 0;
        for (int r = 0; r < replicates; ++r) {
            const auto animals = fedAnew(part, r, 0);
            const auto change = dietChange(animals, 0, animals.front().observations.back().on);
            REQUIRE(change.ok());
            const Estimate& beyond = change.value().rateMmPerDay.beyondTankmates;
            REQUIRE(beyond.known());
            // 0.4 mm/day at the usual size; a larger animal grows as much faster.
            const double size = animals[0].observations[0].standardLengthMm.value / 70.0;
            covered += std::abs(beyond.value - 0.4 * size * (part - 1.0)) <= beyond.u95() ? 1 : 0;
            improved += change.value().rateMmPerDay.verdict == AfterChange::Improved ? 1 : 0;
        }
        INFO("growth times " << part << ": covered " << covered << ", said to have improved " << improved << " of "
                             << replicates);
        const auto coverage = wilsonInterval(covered, replicates);
        CHECK(coverage.upper > 0.93);
        CHECK(coverage.lower < 0.97);
        CHECK((part == 1.0 ? wilsonInterval(improved, replicates).lower < 0.025 : improved > 0.95 * replicates));
    }
}

TEST_CASE("The slowest of a group, fed anew to no effect, is seldom said to have improved") {
    // Chosen because it was slow, it tends to be less slow next time: more than the 2.5 % of an animal chosen blindly.
    const int replicates = 1000;
    int improved = 0;
    for (int r = 0; r < replicates; ++r) {
        const auto animals = fedAnew(1.0, r, slowestBefore(fedAnew(1.0, r, 0)));
        const std::size_t of = slowestBefore(animals);
        const auto change = dietChange(animals, of, animals.front().observations.back().on);
        REQUIRE(change.ok());
        const bool said = change.value().rateMmPerDay.verdict == AfterChange::Improved;
        improved += said ? 1 : 0;
        if (said) CHECK_THAT(change.value().sentence, Contains("tends to be less low next time"));
    }
    INFO("the slowest said to have improved " << improved << " of " << replicates);
    CHECK(wilsonInterval(improved, replicates).lower < 0.12);
}

TEST_CASE("Diets side by side: groups, tests, and what they cannot tell") {
    auto animals = group(8, 6);
    for (std::size_t i = 0; i < animals.size(); ++i) {
        const bool second = i >= 4;
        animals[i].dietSpells = {{{static_cast<std::int64_t>(i) + 1}, {second ? 2 : 1}, kHatched, std::nullopt}};
        if (second) {
            for (int n = 0; n < 6; ++n) {
                setLength(animals[i], n, 60.0 + (9.0 + 0.2 * static_cast<double>(i)) * n);
            }
        }
    }
    const auto comparison = compareDiets(animals, session(0), session(5));
    REQUIRE(comparison.ok());
    REQUIRE(comparison.value().groups.size() == 2);
    CHECK(comparison.value().groups[0].codes.size() == 4);
    CHECK(comparison.value().cautions.empty());  // one tank held both diets
    REQUIRE(comparison.value().pairs.size() == 1);
    const DietPair& pair = comparison.value().pairs.front();
    CHECK(pair.welch.difference > 0.0);
    CHECK(pair.permutation.exact);
    CHECK_THAT(pair.permutation.pTwoSided, WithinAbs(2.0 / 70.0, 1e-12));  // four against four, wholly apart
    SECTION("whole tanks") {
        for (std::size_t i = 4; i < 8; ++i) {
            animals[i].stays.front().tank = {2};
        }
        const auto apart = compareDiets(animals, session(0), session(5));
        REQUIRE(apart.ok());
        REQUIRE(apart.value().cautions.size() == 1);
        CHECK_THAT(apart.value().cautions.front(), Contains("tanks, not animals"));
    }
    SECTION("one diet only") {
        for (auto& one : animals) {
            one.dietSpells.front().diet = {1};
        }
        CHECK(compareDiets(animals, session(0), session(5)).refusal().reason == "too-few-groups");
    }
}

TEST_CASE("A hungry tank: nobody stands out, the tank does") {
    auto animals = group(7, 8);
    for (auto& one : animals) {
        thin(one, 6, 0.88);
        thin(one, 7, 0.85);
    }
    CHECK(flags(reviewAnimals(animals, session(7))).empty());
    const auto level = tankLevel(animals, {1}, session(7));
    REQUIRE(level.ok());
    CHECK(level.value().low);
    CHECK_THAT(level.value().conditionChangePercent.value, WithinAbs(-15.0, 2.0));
    CHECK(level.value().codes.size() == 7);
    CHECK_THAT(level.value().sentence, Contains("whole tank"));
    const auto before = tankLevel(animals, {1}, session(5));
    REQUIRE(before.ok());
    CHECK_FALSE(before.value().low);
    CHECK(tankLevel(animals, {1}, session(2)).refusal().reason == "too-few-sessions");
    CHECK(tankLevel(animals, {5}, session(7)).refusal().reason == "too-few-sessions");
    animals.resize(2);
    CHECK(tankLevel(animals, {1}, session(7)).refusal().reason == "too-few-animals");
}

TEST_CASE("A healthy simulated tank is seldom called low; an error of one session's photos seldom makes it so") {
    int low = 0;
    int judged = 0;
    for (unsigned r = 0; r < 300; ++r) {
        const auto animals = simulate({.failing = false, .seed = 60000U + r});
        for (const Date on : simulated::sessions()) {
            const auto level = tankLevel(animals, {3}, on);
            judged += level.ok() ? 1 : 0;
            low += level.ok() && level.value().low ? 1 : 0;
        }
    }
    INFO("tank called low " << low << " of " << judged << " times");
    CHECK(low <= 6);
}
