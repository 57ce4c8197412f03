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
        std::cout << "whole tanks " << tanks << " s, milestones " << milestones << " s\n" << house.size() << " animals, " << inTank << " in a tank, 36 sessions: findings " << review
                  << " s, condition indices " << indices << " s, changes of food " << changes << " s (" << found
                  << " answers)\n";
    }
}

namespace {

/// A house of docs/judgement.md: at most this part of replicates may hold a false alarm, and at least this part must find
/// the failing animal by the sixth session, both beyond what chance of so many replicates explains.
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

namespace {

/// The animals whose finding within three sessions is asked for: slow, stopped, thinning.
std::vector<GroupTrial> failingTrials(const GroupTrial& usual) {
    std::vector<GroupTrial> trials(3, usual);
    trials[0].failing = Failing::SlowerGrowth;
    trials[0].growthPart = 0.0;
    trials[1].failing = Failing::SlowerGrowth;
    trials[1].growthPart = 0.6;
    trials[2].failing = Failing::LosingDepth;
    return trials;
}

GroupTrial healthyTrial(GroupTrial usual) {
    usual.failing = Failing::Nothing;
    usual.sessionsAfter = 6;
    return usual;
}

std::string percentText(double part) {
    std::ostringstream text;
    text << std::fixed << std::setprecision(1) << 100.0 * part;
    return text.str();
}

/// What a cell of the table must reach: the part found by the third session, and false alarms for 100 animal-months.
struct CellBounds {
    double found = 0.95;
    double falseAlarms = 1.0;
};

/// What was asked for: 95 % found in groups of five and more, 80 % in smaller ones, one false alarm in 100 animal-months.
CellBounds asked(int animals) {
    return {animals >= 5 ? 0.95 : 0.80, 1.0};
}

/// One line of the table in docs/judgement.md: found by the third session, and false alarms. A cell fails when it is
/// outside its bounds by more than chance of so many groups.
void checkCell(const std::string& what, const GroupTrial& usual, const CellBounds& bounds) {
    INFO(what << ", " << usual.animals << " animals");
    std::cout << "| " << what << " | " << usual.animals << " |";
    for (const GroupTrial& trial : failingTrials(usual)) {
        const auto result = timeToNotice(trial).value();
        const Share& third = result.foundBy.back();
        std::cout << ' ' << percentText(third.value) << " |";
        CHECK(third.upper >= bounds.found);
    }
    const auto healthy = timeToNotice(healthyTrial(usual)).value();
    std::cout << ' ' << std::setprecision(2) << std::fixed << healthy.falsePer100Months << " (" << healthy.falseLower
              << " to " << healthy.falseUpper << ") |\n"
              << std::flush;
    CHECK(healthy.falseLower <= bounds.falseAlarms);
}

int groupsWanted() {
    const char* wanted = std::getenv("RINGRULE_GROUPS");
    return wanted == nullptr ? 2000 : std::atoi(wanted);
}

GroupTrial slowGrowing(GroupTrial usual) {  // the slowest growth for which finding is promised
    usual.mmPerDay = 0.2;
    usual.firstLengthMm = 100.0;
    return usual;
}

GroupTrial differing(GroupTrial usual, double forGood, double monthly) {
    usual.growthSpread = forGood;
    usual.monthlySpread = monthly;
    return usual;
}

}  // namespace

TEST_CASE("Time to notice: a failing animal is found, a healthy one seldom flagged, and one seed gives one answer") {
    GroupTrial usual;
    usual.groups = 60;
    // Measured over 2000 groups (docs/judgement.md): all but a few in a thousand are found by the third session, so
    // that four or more missed of 60 come about less than one time in ten thousand.
    for (const GroupTrial& trial : failingTrials(usual)) {
        const auto result = timeToNotice(trial);
        REQUIRE(result.ok());
        REQUIRE(result.value().foundBy.size() == 3);
        CHECK(result.value().foundBy[2].hits >= 57);
        CHECK(result.value().foundBy[2].hits >= result.value().foundBy[0].hits);
        CHECK(result.value().foundBy[2].lower < result.value().foundBy[2].value);
    }
    const auto healthy = timeToNotice(healthyTrial(usual)).value();
    CHECK(healthy.healthyAnimalMonths == 60 * 6 * 9);
    CHECK(healthy.falsePer100Months < 1.5);
    const auto again = timeToNotice(healthyTrial(usual)).value();
    CHECK(again.falseEpisodes == healthy.falseEpisodes);
}

TEST_CASE("Time to notice: an error as large as the lag hides it, and the trial says so") {
    GroupTrial rough;
    rough.groups = 60;
    rough.lengthError = 0.06;
    rough.failing = Failing::SlowerGrowth;
    CHECK(timeToNotice(rough).value().foundBy[2].upper < 0.5);
}

TEST_CASE("Time to notice refuses a trial that makes no sense") {
    const auto refused = [](auto change) {
        GroupTrial trial;
        change(trial);
        const auto result = timeToNotice(trial);
        return !result.ok() && result.refusal().reason == "bad-trial";
    };
    CHECK(refused([](GroupTrial& t) { t.animals = 0; }));
    CHECK(refused([](GroupTrial& t) { t.groups = 0; }));
    CHECK(refused([](GroupTrial& t) { t.mmPerDay = -0.1; }));
    CHECK(refused([](GroupTrial& t) { t.lengthError = 1.0; }));
    CHECK(refused([](GroupTrial& t) { t.asymptoteMm = 60.0; }));
}

TEST_CASE("A trial like a tank takes over its animals, growth and errors") {
    GroupTrial made;
    made.animals = 8;
    made.mmPerDay = 0.5;
    made.lengthError = 0.008;
    made.sidePhotos = 2;
    const auto animals = simulatedGroup(made, 3);
    const auto like = trialLike(animals, {1}, animals.front().observations.back().on);
    REQUIRE(like.ok());
    CHECK(like.value().animals == 8);
    CHECK(like.value().daysBetween == 30);
    CHECK(like.value().sidePhotos == 2);
    // The last interval of eight animals: the middle's error is a tenth.
    CHECK(std::abs(like.value().mmPerDay - 0.5) < 0.1);
    CHECK(std::abs(like.value().lengthError - std::hypot(0.008, 0.003)) < 0.0005);
    CHECK(trialLike(animals, {2}, animals.front().observations.back().on).refusal().reason == "too-few-animals");
}

TEST_CASE("Found within three sessions, and how often falsely: the table of docs/judgement.md", "[.deep]") {
    GroupTrial usual;
    usual.groups = groupsWanted();
    for (const int animals : {2, 3, 4, 5, 6, 8, 12}) {
        usual.animals = animals;
        checkCell("usual", usual, asked(animals));
    }
    GroupTrial rough = usual;
    rough.lengthError = 0.01;
    rough.depthError = 0.0125;
    GroupTrial restless = usual;
    restless.depthWander = 0.025;
    GroupTrial between = usual;  // the trouble starts half-way to the next session
    between.onsetDays = 15.0;
    for (const int animals : {2, 3, 6, 12}) {
        for (GroupTrial trial : {slowGrowing(usual), rough, restless, between}) {
            const std::string what = trial.mmPerDay < 0.4      ? "0.2 mm/day"
                                     : trial.lengthError > 0.005 ? "rougher photos"
                                     : trial.depthWander > 0.02  ? "depth wanders by 2.5 %"
                                                                 : "starts between sessions";
            trial.animals = animals;
            checkCell(what, trial, asked(animals));
        }
        // Healthy growth that differs by twice and more of what the rules assume cannot be told from a lag as seldom as
        // asked: the page says so with these figures, and they must not grow beyond 2.5 and 4.
        GroupTrial wider = differing(usual, 0.10, 0.10);
        GroupTrial widest = differing(usual, 0.17, 0.10);  // H. reidi females after 60 days, 0.53 ± 0.09 mm/day
        wider.animals = widest.animals = animals;
        checkCell("growth differs by 10 %", wider, {asked(animals).found, 2.5});
        checkCell("growth differs by 17 %", widest, {asked(animals).found, 4.0});
    }
}

TEST_CASE("The frontier between finding and false alarms: the table of docs/judgement.md", "[.deep]") {
    GroupTrial usual;
    usual.groups = groupsWanted() / 4;
    for (const auto& [what, trial] : {std::pair("usual", usual), std::pair("0.2 mm/day", slowGrowing(usual)),
                                      std::pair("growth differs by 10 %", differing(usual, 0.10, 0.10))}) {
        for (const int animals : {2, 3, 6, 12}) {
            double foundBefore = 0.0;
            double falseBefore = 0.0;
            for (const auto& [many, few] : {std::pair(3.5, 3.5), std::pair(3.0, 2.6), std::pair(2.7, 2.3)}) {
                JudgeOptions options;
                options.lagging.lagSds = many;
                options.lagging.lagSdsOfFew = few;
                GroupTrial failing = failingTrials(trial)[1];
                GroupTrial healthy = healthyTrial(trial);
                failing.animals = healthy.animals = animals;
                const Share found = timeToNotice(failing, options).value().foundBy.back();
                const auto alarms = timeToNotice(healthy, options).value();
                std::cout << "| " << what << " | " << animals << " | " << many << ", " << few << " | "
                          << percentText(found.value) << " | " << std::setprecision(2) << std::fixed
                          << alarms.falsePer100Months << " |\n"
                          << std::flush;
                // Less asked of a lag finds more and alarms more, on the same groups; an earlier alarm can only take the
                // place of a later one, hence the small allowance.
                CHECK(found.value >= foundBefore - 0.005);
                CHECK(alarms.falsePer100Months >= falseBefore - 0.02);
                foundBefore = found.value;
                falseBefore = alarms.falsePer100Months;
            }
        }
    }
}
