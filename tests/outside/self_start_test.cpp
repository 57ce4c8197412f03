// SPDX-License-Identifier: GPL-3.0-or-later
// Fits that R prints in the examples of its own self-starting models; its figures from memory, data from R's data sets
// `Loblolly` (Kung 1986) and `ChickWeight` (Crowder & Hand 1990), as shipped with R and nlme (GPL).
#include <catch2/catch.hpp>
#include <cmath>

#include "ringrule/growth/fit.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;

TEST_CASE("Loblolly pine 329: R's example of SSasymp is a von Bertalanffy curve") {
    // Asym 94.1282, R0 -8.2508, lrc -3.2176; residual standard error 0.7493 on 3 degrees of freedom.
    const std::vector<GrowthPoint> pine{{3, 3.93, 1},   {5, 9.34, 1},   {10, 26.08, 1},
                                        {15, 37.79, 1}, {20, 48.31, 1}, {25, 56.43, 1}};
    const auto fit = fitGrowth(pine, GrowthModel::VonBertalanffy);
    REQUIRE(fit.ok());
    CHECK_THAT(fit.value().parameters[0], WithinAbs(94.1282, 5e-5));
    CHECK_THAT(fit.value().lengthAtDays(0.0), WithinAbs(-8.2508, 5e-5));
    CHECK_THAT(std::log(fit.value().parameters[1]), WithinAbs(-3.2176, 5e-5));
    CHECK_THAT(fit.value().residualSdMm, WithinAbs(0.7493, 5e-5));
    CHECK(fit.value().degreesOfFreedom == 3);
}

TEST_CASE("Chick 1: R's example of SSlogis") {
    // Asym 937.021 (standard error 465.858), xmid 35.223 (8.312), scal 11.405 (0.913); 9 degrees of freedom.
    const std::vector<double> days{0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21};
    const std::vector<double> grams{42, 51, 59, 64, 76, 93, 106, 125, 149, 171, 199, 205};
    std::vector<GrowthPoint> chick;
    for (std::size_t i = 0; i < days.size(); ++i) {
        chick.push_back({days[i], grams[i], 1.0});
    }
    const auto fit = fitGrowth(chick, GrowthModel::Logistic);
    REQUIRE(fit.ok());
    CHECK_THAT(fit.value().parameters[0], WithinAbs(937.02, 0.02));
    CHECK_THAT(1.0 / fit.value().parameters[1], WithinAbs(11.405, 5.5e-4));
    CHECK_THAT(fit.value().parameters[2], WithinAbs(35.223, 5.5e-4));
    CHECK_THAT(std::sqrt(fit.value().covariance(0, 0)), WithinAbs(465.858, 0.1));
    CHECK_THAT(std::sqrt(fit.value().covariance(2, 2)), WithinAbs(8.312, 5.5e-3));
    CHECK(fit.value().degreesOfFreedom == 9);
}
