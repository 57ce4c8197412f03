// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/rate.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "ringrule/growth/reference.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using namespace std::chrono;

Observation seen(int day, double lengthMm, double sdRandom = 0.3, double sdShared = 0.2) {
    Observation one;
    one.on = sys_days{year{2031} / January / 1} + days{day};
    one.ageDays = 50.0 + day;
    one.standardLengthMm = {lengthMm, sdRandom, sdShared};
    return one;
}

}  // namespace

TEST_CASE("A rate with its interval: shared parts of two set-ups add, of one set-up nearly cancel") {
    const auto apart = growthRate(seen(0, 80.0), seen(20, 90.0));
    REQUIRE(apart.ok());
    CHECK_THAT(apart.value().mmPerDay.value, WithinRel(0.5, 1e-12));
    CHECK_THAT(apart.value().mmPerDay.sdRandom, WithinRel(0.3 * std::sqrt(2.0) / 20.0, 1e-12));
    CHECK_THAT(apart.value().mmPerDay.sdShared, WithinRel(0.2 * std::sqrt(2.0) / 20.0, 1e-12));
    CHECK_THAT(apart.value().lengthSgrPercentPerDay.value, WithinRel(100.0 * std::log(90.0 / 80.0) / 20.0, 1e-12));
    CHECK(apart.value().real());
    const auto together = growthRate(seen(0, 80.0), seen(20, 90.0), SharedPart::Common);
    REQUIRE(together.ok());
    CHECK(together.value().mmPerDay.sdShared < 1e-12);
}

TEST_CASE("A gain within the error is not real") {
    const auto rate = growthRate(seen(0, 80.0), seen(20, 80.9));
    REQUIRE(rate.ok());
    // 1.96·sqrt(2·(0.3² + 0.2²)) = 0.9994 mm
    CHECK_THAT(rate.value().smallestRealGainMm, WithinAbs(0.9994, 5e-5));
    CHECK_FALSE(rate.value().real());
}

TEST_CASE("No rate without two lengths and time between them") {
    CHECK(growthRate(seen(0, 80.0), Observation{}).refusal().reason == "no-length");
    CHECK(growthRate(seen(5, 80.0), seen(5, 81.0)).refusal().reason == "no-time");
    CHECK(growthRate(seen(9, 80.0), seen(5, 81.0)).refusal().reason == "no-time");
}

TEST_CASE("A rate over several sessions is their straight line") {
    const std::vector<Observation> exact{seen(0, 80), seen(10, 84), seen(30, 92), seen(60, 104)};
    const auto rate = rateOver(exact);
    REQUIRE(rate.ok());
    CHECK_THAT(rate.value().value, WithinRel(0.4, 1e-9));
    // Equal errors: sd of a slope is sd/√Σ(t − mean)², mean 25, Σ = 2100.
    CHECK_THAT(rate.value().sdRandom, WithinRel(0.3 / std::sqrt(2100.0), 1e-9));
    CHECK(rateOver(std::span(exact).first(2)).refusal().reason == "too-few-points");
}

TEST_CASE("A reference curve leaves out the animal that is compared with it") {
    std::vector<std::vector<Observation>> animals(4);
    for (int day = 0; day <= 120; day += 30) {
        for (int a = 0; a < 3; ++a) {
            animals[static_cast<std::size_t>(a)].push_back(seen(day, (50.0 + 0.5 * day) * (1.0 + 0.02 * (a - 1))));
        }
        animals[3].push_back(seen(day, 10.0));  // an animal far from all others
    }
    std::vector<GroupMember> group;
    for (std::size_t a = 0; a < animals.size(); ++a) {
        group.push_back({static_cast<std::int64_t>(a), animals[a]});
    }
    const auto curve = referenceCurve(group, 3);
    REQUIRE(curve.ok());
    CHECK(curve.value().animals == 3);
    CHECK_THAT(curve.value().fit.lengthAtDays(110), WithinRel(80.0, 1e-3));
    CHECK_THAT(curve.value().betweenAnimals, WithinAbs(0.02, 1e-3));
    CHECK_THAT(curve.value().newAnimalAt(110).sd() / 80.0, WithinAbs(0.02 * std::sqrt(4.0 / 3.0), 1e-3));
    CHECK_FALSE(referenceCurve(std::span(group).last(1), 3).ok());
}
