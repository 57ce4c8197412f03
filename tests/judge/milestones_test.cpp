// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/milestones.h"

#include <catch2/catch.hpp>
#include <random>

#include "histories.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::Contains;

namespace {

const std::vector<SpeciesFacts> kFacts{
    {"", "", {{"next-tank", 100.0, std::nullopt, "test"}, {"sexing", std::nullopt, 150.0, "test"}}, {}, {}, {}}};

MilestoneDate nextTank(const std::vector<AnimalHistory>& animals, const std::string& code, Date on) {
    for (const MilestoneDate& date : milestonesOf(animals, on, kFacts)) {
        if (date.animalCode == code && date.milestone.name == "next-tank") {
            return date;
        }
    }
    FAIL("no such milestone");
    return {};
}

/// Animals that grow by 12 mm a session from 60 mm, a few percent apart, read with an error of 0.3 %.
std::vector<AnimalHistory> growing(int animals, int sessions) {
    auto all = group(animals, sessions);
    std::mt19937_64 generator(5);
    std::normal_distribution<double> normal;
    for (auto& one : all) {
        for (int n = 0; n < sessions; ++n) {
            setLength(one, n,
                      one.observations[static_cast<std::size_t>(n)].standardLengthMm.value *
                          (1.0 + 0.003 * normal(generator)));
        }
    }
    return all;
}

}  // namespace

TEST_CASE("A milestone of length by the group's growth: the day it was reached later lies in the interval") {
    // 100 mm are reached between the fourth session (96 mm) and the fifth: day 100 for an animal of the usual size.
    const auto animals = growing(3, 3);
    for (const auto& [code, size] : {std::pair("A1", 0.98), std::pair("A2", 0.99), std::pair("A3", 1.0)}) {
        const MilestoneDate date = nextTank(animals, code, session(2));
        const Date truth = session(0) + days(static_cast<int>((100.0 / size - 60.0) / 0.4));
        INFO(date.sentence);
        if (date.told) {
            CHECK_FALSE(date.reached);
            CHECK((!date.earliest || *date.earliest <= truth));
            CHECK((!date.latest || *date.latest >= truth));
        } else {
            CHECK_THAT(date.sentence, Contains("cannot be told yet"));
        }
    }
    const MilestoneDate later = nextTank(growing(7, 4), "A3", session(3));
    INFO(later.sentence);
    REQUIRE(later.told);
    REQUIRE(later.expected.has_value());
    // The true day is the hundredth after the first session; 0.3 % of 100 mm are under a day of growth, two animals
    // apart by 1 % three days, and the forecast is a third as far ahead as was seen.
    CHECK(std::abs((*later.expected - (session(0) + days(100))).count()) <= 5);
    // Four ages cannot show a turn in growth (docs/growth.md); six can.
    CHECK_THAT(later.sentence,
               Contains("by the growth of its group, seen too few times to show whether it is about to slow down."));
}

TEST_CASE("A milestone passed: between two lengths, at the first one, or before any") {
    auto animals = group(3, 6);
    const MilestoneDate between = nextTank(animals, "A3", session(5));
    CHECK(between.reached);
    CHECK_THAT(between.sentence,
               Contains("reached between " + formatDate(session(3)) + " and " + formatDate(session(4))));
    animals[2].observations.erase(animals[2].observations.begin(), animals[2].observations.begin() + 4);
    CHECK_THAT(nextTank(animals, "A3", session(5)).sentence, Contains("already passed at its first length"));

    animals[2].observations.clear();
    const MilestoneDate young = nextTank(animals, "A3", session(2));
    CHECK_FALSE(young.told);
    CHECK_THAT(young.sentence, Contains("It has no length so far"));
    // A year and more old, or once brooding: grown, whatever was measured.
    const MilestoneDate old = nextTank(animals, "A3", kHatched + days(400));
    CHECK((old.told && old.reached));
    CHECK_THAT(old.sentence, Contains("passed before its first length, as it is 400 days old"));
    animals[2].animal.hatchedOn.reset();
    CHECK_FALSE(nextTank(animals, "A3", kHatched + days(400)).told);
    animals[2].states.push_back({{3}, "brooding", kHatched + days(300), std::nullopt});
    CHECK(nextTank(animals, "A3", kHatched + days(400)).reached);
}

TEST_CASE("A milestone of age needs a hatch date and holds its uncertainty") {
    auto animals = group(1, 1);
    animals[0].animal.hatchedSdDays = 5.0;
    const auto dates = milestonesOf(animals, session(0), kFacts);
    REQUIRE(dates.size() == 2);
    CHECK(dates[1].expected == kHatched + days(150));
    CHECK(dates[1].earliest == kHatched + days(140));  // 1.96 · 5 days
    CHECK(dates[1].latest == kHatched + days(160));
    animals[0].animal.hatchedOn.reset();
    CHECK_THAT(milestonesOf(animals, session(0), kFacts)[1].sentence, Contains("hatch date is not known"));
}
