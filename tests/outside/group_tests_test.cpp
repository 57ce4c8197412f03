// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <catch2/catch.hpp>
#include <vector>

#include "ringrule/statistics/group_tests.h"
#include "ringrule/statistics/resampling.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

// Student (1908), extra hours of sleep under two drugs; data from memory, as in R's data set `sleep`.
const std::vector<double> kSleep1{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
const std::vector<double> kSleep2{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
const std::vector<double> kLow{52, 55, 58, 61};
const std::vector<double> kHigh{59, 62, 66, 64};

void checkAdjusted(const std::vector<double>& p, const std::vector<double>& expected, double tolerance) {
    const auto adjusted = benjaminiHochberg(p);
    REQUIRE(adjusted.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK_THAT(adjusted[i], WithinAbs(expected[i], tolerance));
    }
}

}  // namespace

TEST_CASE("Welch's degrees of freedom of {3,6} and {2,2,5}") {
    // 1.898876: rdrr.io/cran/superb.
    const auto result = welchTest(std::vector<double>{3, 6}, std::vector<double>{2, 2, 5});
    CHECK_THAT(result.degreesOfFreedom, WithinAbs(1.898876404, 5e-10));
}

TEST_CASE("Welch test and effect size of the sleep data") {
    // t, df, p as R prints for t.test(extra ~ group): -1.8608, 17.776, 0.07939 (from memory); further digits computed
    // from the formulas by an independent script.
    const auto result = welchTest(kSleep1, kSleep2);
    CHECK_THAT(result.t, WithinAbs(-1.860813, 5e-7));
    CHECK_THAT(result.degreesOfFreedom, WithinAbs(17.776474, 5e-7));
    CHECK_THAT(result.pTwoSided, WithinAbs(0.0793941, 5e-8));
    CHECK_THAT(result.cohenD, WithinAbs(-0.832181, 5e-7));
    CHECK_THAT(result.hedgesG, WithinAbs(-0.797019, 5e-7));
}

TEST_CASE("Exact permutation of the sleep data") {
    // 15048 of 184756: computed by an independent script.
    const auto result = permutationTest(kSleep1, kSleep2);
    CHECK(result.exact);
    CHECK(result.asExtreme == 15048);
    CHECK(result.splits == 184756);
    CHECK_THAT(result.pTwoSided, WithinAbs(0.081448, 5e-7));
}

TEST_CASE("Random permutation agrees with the exact one") {
    const auto result = permutationTest(kSleep1, kSleep2, {.exactUpTo = 1000, .draws = 20000, .seed = 7});
    CHECK_FALSE(result.exact);
    // Four standard errors of a proportion of 0.0814 in 20000 draws: 0.0077.
    CHECK_THAT(result.pTwoSided, WithinAbs(0.081448, 0.0077));
}

TEST_CASE("Small permutation example") {
    // Computed by an independent script; 4 of 70 splits.
    const auto permuted = permutationTest(kLow, kHigh);
    CHECK(permuted.asExtreme == 4);
    CHECK(permuted.splits == 70);
    const auto welch = welchTest(kLow, kHigh);
    CHECK_THAT(welch.t, WithinAbs(-2.555993, 5e-7));
    CHECK_THAT(welch.degreesOfFreedom, WithinAbs(5.635408, 5e-7));
    CHECK_THAT(welch.pTwoSided, WithinAbs(0.045621, 5e-7));
    CHECK_THAT(welch.cohenD, WithinAbs(-1.807360, 5e-7));
    CHECK_THAT(welch.hedgesG, WithinAbs(-1.571617, 5e-7));
    // The smallest p that four against four can give: two of 70 splits.
    const auto apart = permutationTest(std::vector<double>{1, 2, 3, 4}, std::vector<double>{11, 12, 13, 14});
    CHECK_THAT(apart.pTwoSided, WithinRel(2.0 / 70.0, 1e-12));
}

TEST_CASE("Benjamini-Hochberg: published examples") {
    // stdlib.io, padjust.
    checkAdjusted({.008, .03, .123, .6, .2}, {.04, .075, .205, .6, .25}, 1e-12);
    // dirkschumacher/PValueAdjust.jl; a value not in order, and one that the cumulative minimum lowers.
    checkAdjusted({.05, .03, .01, .5}, {.0666667, .06, .04, .5}, 5e-8);
}

TEST_CASE("Benjamini-Hochberg: the fifteen p-values of Benjamini & Hochberg 1995") {
    // Data from memory; adjusted values by an independent script. .0278 and .0298 adjust to the same value: a copy
    // without the cumulative minimum fails here.
    const std::vector<double> p{.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344,
                                .0459, .3240, .4262, .5719, .6528, .7590, 1.0};
    checkAdjusted(p,
                  {.0015, .003, .0095, .035625, .0603, .063857, .063857, .0645, .0765, .486, .581182, .714875, .753231,
                   .813214, 1.0},
                  5e-7);
    const auto adjusted = benjaminiHochberg(p);
    CHECK(std::count_if(adjusted.begin(), adjusted.end(), [](double q) { return q <= 0.05; }) == 4);
    CHECK(std::count_if(p.begin(), p.end(), [](double q) { return q * 15 <= 0.05; }) == 3);  // Bonferroni
}
