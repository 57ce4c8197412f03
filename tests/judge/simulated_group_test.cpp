// SPDX-License-Identifier: GPL-3.0-or-later
// False alarms and time to notice in a simulated house; `docs/judgement.md` prints these figures.
// `test_judge "[report]"` prints them for the scenarios of that page.
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <map>
#include <sstream>

#include "ringrule/judge/condition_index.h"
#include "ringrule/judge/diets.h"
#include "ringrule/judge/milestones.h"
#include "ringrule/judge/review.h"
#include "ringrule/judge/tank_growth.h"
#include "ringrule/judge/tank_level.h"
#include "ringrule/judge/time_to_notice.h"
#include "ringrule/statistics/distributions.h"
#include "simulated_group.h"

using namespace ringrule;

namespace {

/// What happened over many replicates. "First" counts by session, 1 to 9; 0 is never.
struct Tally {
    int replicates = 0;
    int withFalseAlarm = 0;                        ///< replicates with any finding on a healthy animal in any session
    std::map<std::string, int> falseAlarmsByKind;  ///< animal-sessions
    std::map<std::string, int> falseAlarmsByAnimal;
    std::map<int, int> firstThinOrBehind;
    std::map<int, int> firstAny;

    [[nodiscard]] int noticedBy(int session) const {
        int count = 0;
        for (const auto& [first, times] : firstThinOrBehind) {
            count += first > 0 && first <= session ? times : 0;
        }
        return count;
    }
};

bool thinOrBehind(FindingKind kind) {
    return kind == FindingKind::Thin || kind == FindingKind::BehindTankmates || kind == FindingKind::Stalled;
}

Tally tally(SimulatedHouse house, int replicates, std::uint64_t firstSeed) {
    Tally result;
    for (int r = 0; r < replicates; ++r) {
        house.seed = firstSeed + static_cast<std::uint64_t>(r);
        const auto animals = simulate(house);
        bool falseAlarm = false;
        int first = 0;
        int firstAny = 0;
        int number = 0;
        for (const Date on : simulated::sessions()) {
            ++number;
            for (const Finding& finding : reviewAnimals(animals, on)) {
                if (finding.kind == FindingKind::CannotTell) {
                    continue;
                }
                if (house.failing && finding.animalCode == "P4") {
                    first = first == 0 && thinOrBehind(finding.kind) ? number : first;
                    firstAny = firstAny == 0 ? number : firstAny;
                } else {
                    falseAlarm = true;
                    ++result.falseAlarmsByKind[std::string(findingName(finding.kind))];
                    ++result.falseAlarmsByAnimal[finding.animalCode];
                }
            }
        }
        ++result.replicates;
        result.withFalseAlarm += falseAlarm ? 1 : 0;
        ++result.firstThinOrBehind[first];
        ++result.firstAny[firstAny];
    }
    return result;
}

void print(const std::string& title, const Tally& t) {
    const auto wilson = wilsonInterval(t.withFalseAlarm, t.replicates);
    std::cout << title << ": replicates " << t.replicates << ", with a false alarm " << t.withFalseAlarm << " (95 % "
              << 100 * wilson.lower << " to " << 100 * wilson.upper << " %)\n  false alarms";
    for (const auto& [kind, count] : t.falseAlarmsByKind) {
        std::cout << "  " << kind << " " << count;
    }
    for (const auto& [code, count] : t.falseAlarmsByAnimal) {
        std::cout << "  " << code << ":" << count;
    }
    std::cout << "\n  first thin, behind or stalled:";
    for (const auto& [session, count] : t.firstThinOrBehind) {
        std::cout << "  s" << session << " " << count;
    }
    std::cout << "\n  first finding of any kind:";
    for (const auto& [session, count] : t.firstAny) {
        std::cout << "  s" << session << " " << count;
    }
    std::cout << "\n";
}

}  // namespace

TEST_CASE("A simulated house: no healthy animal is flagged, the failing one is by the fifth session") {
    // 200 replicates of nine sessions. Measured over 1000 (docs/judgement.md): 0.6 % with any false alarm; a bound of 6
    // is exceeded by chance one time in ten thousand at that rate.
    const Tally known = tally({}, 200, 5000);
    CHECK(known.withFalseAlarm <= 6);
    CHECK(known.noticedBy(5) == 200);
    CHECK(known.falseAlarmsByAnimal.count("P6") == 0);  // slower by 5.5 %, within the ordinary spread
    const Tally sexed = tally({.sexesKnown = true}, 200, 5000);
    CHECK(sexed.withFalseAlarm <= 6);
    CHECK(sexed.noticedBy(5) == 200);
    const Tally fewPhotos = tally({.sexesKnown = true, .widths = true, .sidePhotos = 2}, 200, 5000);
    CHECK(fewPhotos.withFalseAlarm <= 6);
    CHECK(fewPhotos.noticedBy(5) == 200);
}

TEST_CASE("A simulated house in which nobody fails") {
    const Tally healthy = tally({.failing = false}, 200, 9000);
    CHECK(healthy.withFalseAlarm <= 8);  // 1.0 % measured; the bound is exceeded one time in ten thousand
}

TEST_CASE("A simulated house: thinning alone is noticed by the sixth session") {
    const Tally thinning = tally({.slowedGrowth = 1.0}, 200, 7000);
    CHECK(thinning.noticedBy(6) >= 196);  // measured: all of 1000
    CHECK(thinning.noticedBy(5) >= 180);  // measured: 95 %
}

TEST_CASE("The interval of how thin covers the truth and is not much too wide") {
    // The sixth session: the failing animal has lost all of its 20 %. Truth is its own build and loss against the usual
    // of the population, of which the six tankmates are a sample.
    int covered = 0;
    int flagged = 0;
    double squares = 0.0;
    double told = 0.0;
    for (unsigned r = 0; r < 2000; ++r) {
        simulated::Generator generator({.slowedGrowth = 1.0, .seed = 300000U + r});
        const auto animals = generator.house();
        for (const Finding& finding : reviewAnimals(animals, simulated::sessions()[5])) {
            if (finding.animalCode == "P4" && finding.kind == FindingKind::Thin) {
                const double truth = 100.0 * (generator.builds()[3] * 0.8 - 1.0);
                covered += std::abs(finding.by.value - truth) <= finding.by.u95() ? 1 : 0;
                squares += std::pow(finding.by.value - truth, 2);
                told += finding.by.u95();
                ++flagged;
            }
        }
    }
    const double rmse = std::sqrt(squares / flagged);
    INFO("covered " << covered << " of " << flagged << ", told u95 " << told / flagged << ", 1.96 RMSE "
                    << 1.96 * rmse);
    CHECK(flagged > 1950);
    CHECK(wilsonInterval(covered, flagged).upper > 0.93);
    // The least spread that is believed (4 %) is above the true one (3 %), so it covers more than it must.
    CHECK(wilsonInterval(covered, flagged).lower < 0.99);
    CHECK(told / flagged < 1.4 * 1.96 * rmse);
}

// script/bench judge runs this; processor time of one thread, so that a busy machine matters less.
TEST_CASE("Speed of a review", "[.][bench]") {
    for (const int inTank : {10, 50}) {
        GroupTrial trial;
        trial.animals = inTank;
        trial.mmPerDay = 0.5;
        trial.asymptoteMm = 180.0;
        trial.sessionsBefore = 35;
        trial.sessionsAfter = 1;
        std::vector<AnimalHistory> house;
        for (int tank = 0; tank < 1000 / inTank; ++tank) {
            for (AnimalHistory& animal : simulatedGroup(trial, tank)) {
                animal.animal.id = {static_cast<std::int64_t>(house.size()) + 1};
                animal.stays.front().tank = {tank + 1};
                animal.dietSpells.push_back({animal.animal.id, {1}, animal.stays.front().from, std::nullopt});
                if (house.size() % 10 == 0) {
                    animal.dietSpells.back().to = animal.observations[30].on;
                    animal.dietSpells.push_back({animal.animal.id, {2}, animal.observations[30].on, std::nullopt});
                }
                house.push_back(std::move(animal));
            }
        }
        const Date on = house.front().observations.back().on;
        const auto seconds = [](auto&& run) {
            const std::clock_t start = std::clock();
            run();
            return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
        };
        std::size_t found = 0;
        const double review = seconds([&] { found = reviewAnimals(house, on).size(); });
        const double indices = seconds([&] { found += conditionIndices(house, on).size(); });
        const double changes = seconds([&] {
            for (std::size_t i = 0; i < house.size(); ++i) {
                found += dietChange(house, i, on).ok() ? 1 : 0;
            }
        });
        SpeciesFacts facts;
        facts.species = house.front().animal.species;
        facts.growth = {{0.0, 5000.0, 0.4, 0.3, "", "a test"}};
        const double tanks = seconds([&] {
            for (int tank = 1; tank <= 1000 / inTank; ++tank) {
                found += tankLevel(house, {tank}, on).ok() ? 1 : 0;
                found += tankGrowth(house, {tank}, on, {facts}).ok() ? 1 : 0;
            }
        });
        SpeciesFacts due;
        due.milestones = {{"next-tank", 178.0, std::nullopt, "a test"}};
        const double milestones = seconds([&] { found += milestonesOf(house, on, {due}).size(); });
        std::cout << "whole tanks " << tanks << " s, milestones " << milestones << " s\n"
                  << house.size() << " animals, " << inTank << " in a tank, 36 sessions: findings " << review
                  << " s, condition indices " << indices << " s, changes of food " << changes << " s (" << found
                  << " answers)\n";
    }
}

namespace {

/// A house of docs/judgement.md: at most this part of replicates may hold a false alarm, and at least this part must
/// find the failing animal by the sixth session, both beyond what chance of so many replicates explains.
void checkHouse(const std::string& title, const SimulatedHouse& house, double mostFalse, double leastFound) {
    const Tally seen = tally(house, 1000, 1);
    print(title, seen);
    INFO(title);
    CHECK(wilsonInterval(seen.withFalseAlarm, seen.replicates).lower < mostFalse);
    CHECK(wilsonInterval(seen.noticedBy(6), seen.replicates).upper > leastFound);
}

}  // namespace

TEST_CASE("Operating characteristics", "[.][deep][report]") {
    // A healthy house has 11 animals over nine months, of which adults are seen every second month, 76 animal-months:
    // the one false alarm asked for in 100 animal-months would be 0.76 in a house. What is promised is far less, 2 %,
    // and 5 % where photos, sessions or animals are worse than the rules assume. Found must be 95 % where an animal
    // halves its growth or loses a fifth of its depth; a tenth of its depth, spread over three months, is little more
    // than the least that is told, and found half the time at best.
    checkHouse("as the demo", {}, 0.02, 0.95);
    checkHouse("sexes known", {.sexesKnown = true}, 0.02, 0.95);
    checkHouse("sexes and widths known", {.sexesKnown = true, .widths = true}, 0.02, 0.95);
    checkHouse("widths known", {.widths = true}, 0.02, 0.95);
    checkHouse("two side photos, sexes and widths known", {.sexesKnown = true, .widths = true, .sidePhotos = 2}, 0.02,
               0.95);
    checkHouse("nobody fails", {.failing = false}, 0.02, 0.0);
    checkHouse("thins but grows on", {.slowedGrowth = 1.0}, 0.02, 0.95);
    checkHouse("slows by 30 %, keeps its depth", {.slowedGrowth = 0.7, .deepestLoss = 0.0}, 0.02, 0.8);
    checkHouse("slows by half, keeps its depth", {.slowedGrowth = 0.5, .deepestLoss = 0.0}, 0.02, 0.95);
    checkHouse("thins by 10 % only", {.slowedGrowth = 1.0, .deepestLoss = 0.1}, 0.02, 0.3);
    checkHouse("rougher photos (length 1 %, depth 2.5 %)", {.lengthError = 0.01, .depthError = 0.025}, 0.05, 0.95);
    checkHouse("errors twice what the photos tell", {.toldErrors = 0.5}, 0.05, 0.95);
    checkHouse("one session in thirty spoilt by 8 % of depth", {.spoilt = 1.0 / 30.0}, 0.05, 0.95);
    checkHouse("wider healthy spread (size 6 %, depth 6 %, growth 8 %)",
               {.betweenSize = 0.06, .betweenDepth = 0.06, .betweenGrowth = 0.08}, 0.05, 0.95);
    checkHouse("four animals", {.pipefish = 4}, 0.02, 0.95);
}
