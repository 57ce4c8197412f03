// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/fit.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "ringrule/statistics/distributions.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

struct KnownCurve {
    GrowthModel model;
    std::vector<double> parameters;
};

std::vector<KnownCurve> knownCurves() {
    return {{GrowthModel::Linear, {40.0, 0.4}},
            {GrowthModel::Exponential, {10.0, 0.02}},
            {GrowthModel::VonBertalanffy, {180.0, 0.008, -10.0}},
            {GrowthModel::Gompertz, {160.0, 2.5, 0.015}},
            {GrowthModel::Logistic, {150.0, 0.025, 80.0}}};
}

std::vector<GrowthPoint> pointsOn(const KnownCurve& curve, double sdMm, std::uint64_t seed) {
    std::mt19937_64 generator(seed);
    std::normal_distribution<double> normal(0.0, 1.0);
    std::vector<GrowthPoint> points;
    for (double age = 10; age <= 250; age += 15) {
        points.push_back({age, lengthAt(curve.model, curve.parameters, age) + sdMm * normal(generator), 1.0});
    }
    return points;
}

}  // namespace

TEST_CASE("Each model gives back its own parameters") {
    for (const KnownCurve& curve : knownCurves()) {
        INFO(growthModelName(curve.model));
        const auto fit = fitGrowth(pointsOn(curve, 0.0, 1), curve.model);
        REQUIRE(fit.ok());
        for (std::size_t i = 0; i < curve.parameters.size(); ++i) {
            CHECK_THAT(fit.value().parameters[i], WithinRel(curve.parameters[i], 1e-6));
        }
    }
}

TEST_CASE("AICc mostly finds the model that made the data") {
    // A model that contains the true one wins by chance about one time in seven, as AICc's penalty of about 2.9 is
    // exceeded by a chi-squared of one degree of freedom 9 % of the time, and two models contain the exponential.
    for (const KnownCurve& curve : knownCurves()) {
        INFO(growthModelName(curve.model));
        int found = 0;
        for (unsigned seed = 0; seed < 30; ++seed) {
            const auto choice = chooseGrowth(pointsOn(curve, 0.3, 100 + seed));
            REQUIRE(choice.ok());
            found += choice.value().best().model == curve.model ? 1 : 0;
        }
        CHECK(found >= 21);
    }
}

TEST_CASE("AICc as Hurvich and Tsai wrote it") {
    const auto points = pointsOn(knownCurves()[0], 0.5, 3);
    const auto fit = fitGrowth(points, GrowthModel::Linear);
    REQUIRE(fit.ok());
    const double n = 17;
    const double k = 3;
    CHECK_THAT(
        fit.value().aicc,
        WithinRel(n * std::log(fit.value().residualSumOfSquares / n) + 2 * k + 2 * k * (k + 1) / (n - k - 1), 1e-12));
}

TEST_CASE("Rates are the derivative of length") {
    for (const KnownCurve& curve : knownCurves()) {
        INFO(growthModelName(curve.model));
        const double h = 1e-3;  // truncation h² and rounding 1e-13/h both below 1e-9
        const double numeric =
            (lengthAt(curve.model, curve.parameters, 70 + h) - lengthAt(curve.model, curve.parameters, 70 - h)) /
            (2 * h);
        CHECK_THAT(rateAt(curve.model, curve.parameters, 70), WithinRel(numeric, 1e-7));
    }
    CHECK(std::isinf(asymptote(GrowthModel::Linear, std::vector<double>{1, 2})));
    CHECK(asymptote(GrowthModel::Gompertz, std::vector<double>{160, 2.5, 0.015}) == 160.0);
}

TEST_CASE("The mean band and the band of a new animal cover what they promise") {
    const KnownCurve curve = knownCurves()[3];
    int meanCovered = 0;
    int newCovered = 0;
    const int scenes = 1000;
    std::mt19937_64 generator(99);
    std::normal_distribution<double> normal;
    for (int scene = 0; scene < scenes; ++scene) {
        const auto fit = fitGrowth(pointsOn(curve, 2.0, 1000U + static_cast<unsigned>(scene)), curve.model);
        REQUIRE(fit.ok());
        const double truth = lengthAt(curve.model, curve.parameters, 120);
        meanCovered += std::abs(fit.value().lengthAtDays(120) - truth) <= fit.value().meanBandMm(120) ? 1 : 0;
        const double another = truth + 2.0 * normal(generator);
        newCovered += std::abs(another - fit.value().lengthAtDays(120)) <= fit.value().newAnimalBandMm(120) ? 1 : 0;
    }
    for (int covered : {meanCovered, newCovered}) {
        INFO(covered << " of " << scenes);
        const auto wilson = wilsonInterval(covered, scenes);
        CHECK(wilson.upper > 0.93);
        CHECK(wilson.lower < 0.97);
    }
}

TEST_CASE("A weight of four counts as four points") {
    std::vector<GrowthPoint> weighted{{10, 20, 4}, {20, 31, 1}, {30, 39, 1}, {40, 52, 1}};
    std::vector<GrowthPoint> repeated{{10, 20, 1}, {10, 20, 1}, {10, 20, 1}, {10, 20, 1},
                                      {20, 31, 1}, {30, 39, 1}, {40, 52, 1}};
    const auto one = fitGrowth(weighted, GrowthModel::Linear);
    const auto other = fitGrowth(repeated, GrowthModel::Linear);
    REQUIRE((one.ok() && other.ok()));
    CHECK_THAT(one.value().parameters[1], WithinRel(other.value().parameters[1], 1e-10));
    CHECK(one.value().degreesOfFreedom == 2);
}

TEST_CASE("Too little to fit is refused, with the reason") {
    const std::vector<GrowthPoint> sameAge{{30, 40, 1}, {30, 41, 1}, {30, 42, 1}, {30, 43, 1}};
    const auto equalAges = fitGrowth(sameAge, GrowthModel::Linear);
    REQUIRE_FALSE(equalAges.ok());
    CHECK(equalAges.refusal().reason == "too-few-ages");
    const std::vector<GrowthPoint> two{{30, 40, 1}, {60, 50, 1}};
    CHECK_FALSE(fitGrowth(two, GrowthModel::Linear).ok());
    CHECK_FALSE(chooseGrowth(two).ok());
    // A straight line does not tell an asymptote.
    const auto straight = fitGrowth(pointsOn(knownCurves()[0], 0.0, 1), GrowthModel::VonBertalanffy);
    CHECK((!straight.ok() || straight.value().asymptoteMm() > 1000.0));
}
