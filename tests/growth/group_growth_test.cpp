// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/group_growth.h"

#include <catch2/catch.hpp>

#include "ringrule/growth/forecast.h"
#include "ringrule/growth/rate.h"
#include "ringrule/statistics/distributions.h"
#include "simulated_growth.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

bool holds(const Interval95& interval, double truth) {
    return interval.lower <= truth && truth <= interval.upper;
}

/// The part covered must be compatible with 93 to 97 %.
void checkCoverage(const char* what, int covered, int trials) {
    const auto wilson = wilsonInterval(covered, trials);
    INFO(what << ": " << covered << " of " << trials);
    CHECK(wilson.upper > 0.93);
    CHECK(wilson.lower < 0.97);
}

struct Coverage {
    int trials = 0;
    int singular = 0;
    int refused = 0;
    int mean = 0;
    int newAnimal = 0;
    int ownCurve = 0;
    int rate = 0;
    int sgr = 0;
    int forecast = 0;
    int measured = 0;
    int reached = 0;
};

/// Every promise of one simulated group, for its first animal.
void addGroup(const GrowthTruth& truth, std::uint64_t seed, Coverage& seen) {
    SimulatedGrowth data = simulatedGrowth(truth, seed);
    const auto growth = groupGrowth(data.lengths);
    REQUIRE(growth.ok());
    const GroupGrowth& group = growth.value();
    const double middle = data.middleDay();
    const double last = group.oldestDays;
    const double ahead = last + truth.everyDays;
    std::mt19937_64 generator(seed + 99991);
    std::normal_distribution<double> normal;
    ++seen.trials;
    seen.singular += group.fit.boundary ? 1 : 0;
    seen.mean += holds(group.meanAt(middle), truth.lengthMm) ? 1 : 0;
    const double another = truth.lengthMm + std::hypot(truth.lengthSdMm, truth.errorSdMm) * normal(generator);
    seen.newAnimal += holds(group.newAnimalAt(middle), another) ? 1 : 0;
    seen.ownCurve += holds(*group.animalAt(0, last), data.trueLength(0, last)) ? 1 : 0;
    const double from = last - truth.everyDays;
    seen.rate += holds(*group.rateMmPerDay(0, from, last), data.animals[0].mmPerDay) ? 1 : 0;
    const double sgr = specificGrowthPercentPerDay(data.trueLength(0, from), data.trueLength(0, last), truth.everyDays);
    seen.sgr += holds(*group.sgrPercentPerDay(0, from, last), sgr) ? 1 : 0;
    const auto forecast = GrowthForecast::of({}, &group, 0);
    REQUIRE(forecast.ok());
    const auto later = forecast.value().lengthAtDays(ahead);
    REQUIRE(later.ok());
    const double then = data.trueLength(0, ahead);
    seen.forecast += holds(later.value().lengthMm, then) ? 1 : 0;
    seen.measured += holds(later.value().measuredMm, then + truth.errorSdMm * normal(generator)) ? 1 : 0;
    const auto when = forecast.value().reaching(then);
    if (!when) {
        return;
    }
    const bool notEarly = !when.value().earliestDays || *when.value().earliestDays <= ahead;
    const bool notLate = !when.value().latestDays || *when.value().latestDays >= ahead;
    seen.reached += notEarly && notLate ? 1 : 0;
}

Coverage coverage(const GrowthTruth& truth, int trials, std::uint64_t seed) {
    Coverage seen;
    for (int i = 0; i < trials; ++i) {
        addGroup(truth, seed + static_cast<std::uint64_t>(i), seen);
    }
    return seen;
}

Observation observed(int day, std::optional<double> age, double lengthMm) {
    Observation one;
    one.on = std::chrono::sys_days(std::chrono::days(22000 + day));
    one.ageDays = age;
    one.standardLengthMm = {lengthMm, 0.3, 0.1};
    return one;
}

}  // namespace

TEST_CASE("A group's bands, rates and forecasts cover what they promise") {
    const Coverage seen = coverage({}, 300, 1000);
    checkCoverage("mean", seen.mean, seen.trials);
    checkCoverage("new animal", seen.newAnimal, seen.trials);
    checkCoverage("own curve", seen.ownCurve, seen.trials);
    checkCoverage("rate", seen.rate, seen.trials);
    checkCoverage("specific rate", seen.sgr, seen.trials);
    checkCoverage("forecast", seen.forecast, seen.trials);
    checkCoverage("measured", seen.measured, seen.trials);
    checkCoverage("day reached", seen.reached, seen.trials);
}

TEST_CASE("Coverage of a group's growth over sizes of group", "[.deep]") {
    for (const int animals : {3, 4, 6, 12, 40}) {
        for (const int sessions : {4, 6, 12}) {
            const Coverage seen = coverage({.animals = animals, .sessions = sessions}, 2000, 50000);
            const auto percent = [&](int part) { return 100.0 * part / seen.trials; };
            WARN(animals << " animals, " << sessions << " sessions: mean " << percent(seen.mean) << ", new animal "
                         << percent(seen.newAnimal) << ", own curve " << percent(seen.ownCurve) << ", rate "
                         << percent(seen.rate) << ", SGR " << percent(seen.sgr) << ", forecast "
                         << percent(seen.forecast) << ", measured " << percent(seen.measured) << ", day reached "
                         << percent(seen.reached) << " %; on the boundary " << percent(seen.singular) << " %");
            CHECK(seen.trials == 2000);
        }
    }
}

TEST_CASE("Repeat photos of one session are no further animals") {
    SimulatedGrowth data = simulatedGrowth({}, 4);
    const auto once = groupGrowth(data.lengths);
    auto repeated = data.lengths;
    repeated.insert(repeated.end(), data.lengths.begin(), data.lengths.end());
    const auto twice = groupGrowth(repeated);
    REQUIRE((once.ok() && twice.ok()));
    CHECK(twice.value().fit.observations == 36);
    CHECK_THAT(twice.value().meanAt(100).upper, WithinRel(once.value().meanAt(100).upper, 1e-9));
}

TEST_CASE("Growth that bends is told on the scale that fits it") {
    std::vector<AnimalLength> lengths;
    std::mt19937_64 generator(8);
    std::normal_distribution<double> normal;
    for (int a = 0; a < 8; ++a) {
        const double start = std::log(9.0) + 0.05 * normal(generator);
        const double rate = 0.02 + 0.001 * normal(generator);
        for (int day = 5; day <= 125; day += 20) {
            lengths.push_back(
                {a, static_cast<double>(day), std::exp(start + rate * day + 0.01 * normal(generator)), 1});
        }
    }
    const auto growth = groupGrowth(lengths);
    REQUIRE(growth.ok());
    CHECK(growth.value().scale == LengthScale::LogLength);
    CHECK(growth.value().curve == AgeCurve::Straight);
    // Each animal's rate is 2 % a day, give or take 0.1.
    CHECK_THAT(growth.value().sgrPercentPerDay(3, 45, 65)->value, WithinAbs(2.0, 0.3));
    const auto rate = growth.value().rateMmPerDay(3, 45, 65);
    const double gain = growth.value().animalAt(3, 65)->value - growth.value().animalAt(3, 45)->value;
    CHECK_THAT(rate->value, WithinRel(gain / 20.0, 1e-12));
    CHECK(rate->lower < rate->value);
    CHECK_FALSE(growth.value().animalAt(77, 45));
}

TEST_CASE("A group's growth that cannot be told is refused, with the reason") {
    const auto reason = [](const std::vector<AnimalLength>& lengths) { return groupGrowth(lengths).refusal().reason; };
    CHECK(reason({}) == "too-few-animals");
    CHECK(reason({{1, 30, 50, 1}}) == "too-few-animals");
    CHECK(reason({{1, 30, -50, 1}, {2, 30, 50, 1}, {3, 30, 51, 1}}) == "no-length");
    CHECK(reason({{1, 30, 50, 1}, {2, 30, 52, 1}, {3, 30, 51, 1}}) == "too-few-ages");
    CHECK(reason({{1, 30, 50, 1}, {1, 60, 55, 1}, {2, 30, 52, 1}, {2, 60, 58, 1}, {3, 90, 61, 1}}) == "too-few-points");
    std::vector<AnimalLength> exact;
    for (int a = 0; a < 4; ++a) {
        for (int day : {30, 60, 90, 120}) {
            exact.push_back({a, static_cast<double>(day), 40.0 + a + 0.5 * day, 1.0});
        }
    }
    CHECK(reason(exact) == "no-scatter");
}

TEST_CASE("Lengths of a group's sessions: ages when known, days since arrival when nobody's is") {
    const std::vector<Observation> young{observed(0, 50.0, 60), observed(30, 80.0, 70)};
    const std::vector<Observation> wild{observed(10, std::nullopt, 90), observed(40, std::nullopt, 93)};
    const std::vector<GroupMember> both{{1, young}, {2, wild}};
    const auto aged = lengthsOf(both, 99);
    REQUIRE(aged.ok());
    REQUIRE(aged.value().size() == 2);
    CHECK(aged.value()[1].ageDays == 80.0);
    const std::vector<GroupMember> unknown{{2, wild}};
    const auto arrived = lengthsOf(unknown, 99);
    REQUIRE(arrived.ok());
    CHECK(arrived.value()[1].ageDays == 30.0);
    CHECK(lengthsOf(both, 1).value().size() == 2);
    const std::vector<Observation> back{observed(30, 80.0, 70), observed(0, 50.0, 60)};
    const std::vector<GroupMember> reversed{{1, back}};
    CHECK(lengthsOf(reversed, 99).refusal().reason == "dates-reversed");
}

TEST_CASE("Forecasts from an animal's own curve cover what they promise") {
    // Eight sessions of a straight growth, as a keeper has after eight months.
    int forecast = 0;
    int reached = 0;
    int trials = 0;
    for (unsigned seed = 0; seed < 250; ++seed) {
        const SimulatedGrowth data = simulatedGrowth({.animals = 1, .sessions = 8}, 300 + seed);
        std::vector<GrowthPoint> own;
        for (const AnimalLength& one : data.lengths) {
            own.push_back({one.ageDays, one.lengthMm, 1.0});
        }
        const auto told = GrowthForecast::of(own, nullptr, 0);
        REQUIRE(told.ok());
        CHECK(told.value().basis() == ForecastBasis::OwnCurve);
        const double ahead = own.back().ageDays + 30.0;
        const double truth = data.trueLength(0, ahead);
        ++trials;
        forecast += holds(told.value().lengthAtDays(ahead).value().lengthMm, truth) ? 1 : 0;
        const auto when = told.value().reaching(truth);
        reached += when && (!when.value().earliestDays || *when.value().earliestDays <= ahead) &&
                           (!when.value().latestDays || *when.value().latestDays >= ahead)
                       ? 1
                       : 0;
    }
    checkCoverage("forecast", forecast, trials);
    checkCoverage("day reached", reached, trials);
}

TEST_CASE("A forecast that cannot be made is refused, with the reason") {
    const SimulatedGrowth data = simulatedGrowth({}, 12);
    const auto group = groupGrowth(data.lengths);
    REQUIRE(group.ok());
    const std::vector<GrowthPoint> two{{60, 50, 1}, {90, 60, 1}};
    CHECK(GrowthForecast::of(two, nullptr, 0).refusal().reason == "not-identified");
    CHECK(GrowthForecast::of(two, &group.value(), 77).refusal().reason == "not-identified");
    const std::vector<GrowthPoint> negative{{60, 50, 1}, {90, -60, 1}};
    CHECK(GrowthForecast::of(negative, &group.value(), 0).refusal().reason == "no-length");
    const auto forecast = GrowthForecast::of(two, &group.value(), 0);
    REQUIRE(forecast.ok());
    CHECK(forecast.value().basis() == ForecastBasis::GroupCurve);
    CHECK(forecast.value().horizonDays() == 210.0 + 75.0);
    CHECK(forecast.value().lengthAtDays(300).refusal().reason == "too-far-ahead");
    CHECK(forecast.value().lengthAtDays(30).refusal().reason == "before-first");
    CHECK(forecast.value().reaching(1000).refusal().reason == "not-reached");
    CHECK(forecast.value().reaching(-1).refusal().reason == "no-length");
    CHECK(forecast.value().lengthAtDays(240).value().beyondData);
    const auto passed = forecast.value().reaching(5.0);
    REQUIRE(passed.ok());
    CHECK(passed.value().already);
    CHECK_FALSE(passed.value().sentence.empty());
}
