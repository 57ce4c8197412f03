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

Observation observed(int day, std::optional<double> age, double lengthMm) {
    Observation one;
    one.on = std::chrono::sys_days(std::chrono::days(22000 + day));
    one.ageDays = age;
    one.standardLengthMm = {lengthMm, 0.3, 0.1};
    return one;
}

}  // namespace

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

TEST_CASE("Growth that levels off is told by a saturating curve, its rate found, each animal with a bend of its own") {
    const SimulatedGrowth data =
        simulatedGrowth({.animals = 12, .sessions = 12, .errorSdMm = 0.2, .shape = GrowthShape::VonBertalanffy}, 3);
    const auto growth = groupGrowth(data.lengths);
    REQUIRE(growth.ok());
    CHECK(growth.value().scale == LengthScale::Length);
    CHECK(growth.value().curve == AgeCurve::Saturating);
    // Rates differ by 10 %, so that the common one of twelve animals is 0.0056 to some 3 %.
    CHECK_THAT(growth.value().perDay, WithinRel(0.0056, 0.1));
    REQUIRE(growth.value().bends.has_value());
    for (std::size_t i = 0; i < 12; ++i) {
        // What a bend of one's own cannot follow of a rate that differs by 10 % is below a millimetre.
        CHECK_THAT(growth.value().animalAt(static_cast<std::int64_t>(i), 225)->value,
                   WithinAbs(data.trueLength(i, 225), 1.0));
    }
    // A straight growth is told as one, but for the one time in five that a bend wins by chance (80 % of 2000 groups of
    // six with six sessions were told straight).
    int straight = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        straight += groupGrowth(simulatedGrowth({}, seed).lengths).value().curve == AgeCurve::Straight ? 1 : 0;
    }
    CHECK(straight >= 22);
}

TEST_CASE("Logistic growth is told by what saturates on the reciprocal of length") {
    const SimulatedGrowth data = simulatedGrowth({.animals = 6, .sessions = 12, .shape = GrowthShape::Logistic}, 5);
    const auto growth = groupGrowth(data.lengths);
    REQUIRE(growth.ok());
    CHECK(growth.value().scale == LengthScale::Reciprocal);
    CHECK(growth.value().curve == AgeCurve::Saturating);
    for (std::size_t i = 0; i < 6; ++i) {
        const auto told = growth.value().animalAt(static_cast<std::int64_t>(i), 225.0);
        // An own curve of three parameters from twelve lengths with 0.6 mm each: 0.6·√(3/12) = 0.3 mm.
        CHECK_THAT(told->value, WithinAbs(data.trueLength(i, 225.0), 4.0 * 0.3));
        CHECK(growth.value().rateMmPerDay(static_cast<std::int64_t>(i), 360, 390)->lower > 0.0);
    }
}

TEST_CASE("Groups whose fits come to the edge of what can be computed are told, or refused with a reason") {
    // In the first the degrees of freedom of a mean come out near nothing, in the second a candidate's fixed effects
    // are not told apart once a spread is put at zero.
    for (const unsigned seed : {50983U, 51006U}) {
        const SimulatedGrowth data =
            simulatedGrowth({.animals = 3, .sessions = 12, .shape = GrowthShape::Logistic}, seed);
        const auto growth = groupGrowth(data.lengths);
        REQUIRE(growth.ok());
        const Interval95 mean = growth.value().meanAt(data.middleDay());
        CHECK((mean.lower < mean.value && mean.value < mean.upper));
        // Three animals whose rates differ by a tenth: their mean is known to some 5 %.
        CHECK_THAT(mean.value, WithinRel(data.lengthOf(data.usual(), data.middleDay()), 0.15));
    }
}

TEST_CASE("An animal seen twice in a group with bends is told, with an interval that covers") {
    int covered = 0;
    int told = 0;
    for (unsigned seed = 0; seed < 150; ++seed) {
        SimulatedGrowth data = simulatedGrowth(
            {.animals = 6, .sessions = 8, .errorSdMm = 0.3, .shape = GrowthShape::VonBertalanffy}, seed);
        std::erase_if(data.lengths, [](const AnimalLength& one) { return one.animal == 5 && one.ageDays > 100.0; });
        const auto growth = groupGrowth(data.lengths);
        REQUIRE(growth.ok());
        CHECK(growth.value().timesSeen[5] == 2);
        const auto sparse = growth.value().animalAt(5, 90.0);
        REQUIRE(sparse.has_value());
        told += growth.value().bends.has_value() ? 1 : 0;
        covered += sparse->lower <= data.trueLength(5, 90.0) && data.trueLength(5, 90.0) <= sparse->upper ? 1 : 0;
    }
    CHECK(told > 140);
    INFO("covered " << covered << " of 150");
    CHECK(wilsonInterval(covered, 150).upper > 0.93);
    CHECK(wilsonInterval(covered, 150).lower < 0.97);
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
