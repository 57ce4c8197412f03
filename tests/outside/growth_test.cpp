// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <utility>
#include <vector>

#include "nist_dataset.h"
#include "r_table.h"
#include "ringrule/growth/fit.h"
#include "ringrule/growth/group_growth.h"
#include "ringrule/growth/model.h"
#include "ringrule/growth/rate.h"
#include "ringrule/statistics/distributions.h"
#include "ringrule/statistics/resampling.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

struct Worked {
    double t;
    double length;
};

void checkWorked(GrowthModel model, const std::vector<double>& parameters, const std::vector<Worked>& values) {
    for (const Worked& one : values) {
        INFO(growthModelName(model) << " at " << one.t);
        CHECK_THAT(lengthAt(model, parameters, one.t), WithinAbs(one.length, 5.1e-5));  // four decimals printed
    }
}

}  // namespace

TEST_CASE("Von Bertalanffy of two seahorses") {
    // Parameters (cm, years): H. comes from Morgan & Vincent 2013 (publish.csiro.au MF12171); H. reidi from
    // repositorio.furg.br/handle/1/5612, t0 = 0 assumed. Lengths computed from the formula by an independent script.
    checkWorked(GrowthModel::VonBertalanffy, {16.7, 2.9, 0.03},
                {{0.1, 3.0682}, {0.25, 7.8766}, {0.5, 12.4266}, {1, 15.6976}, {2, 16.6448}});
    checkWorked(GrowthModel::VonBertalanffy, {20.0, 1.195, 0.0},
                {{0.25, 5.1651}, {0.5, 8.9963}, {1, 13.9459}, {2.5, 18.9917}});
}

TEST_CASE("Gompertz worked numbers") {
    // Computed from the formula by an independent script.
    const std::vector<double> p{120, 2.5, 0.03};
    checkWorked(GrowthModel::Gompertz, p, {{0, 9.8502}, {30, 43.4264}, {60, 79.3798}, {90, 101.4411}, {120, 112.0766}});
    checkWorked(GrowthModel::Gompertz, p, {{30.5430243958, 44.1455}});  // inflection at ln b / k, height A/e
    const double h = 1.0;                                               // the rate is greatest at the inflection
    const double t = std::log(2.5) / 0.03;
    CHECK(rateAt(GrowthModel::Gompertz, p, t) > rateAt(GrowthModel::Gompertz, p, t - h));
    CHECK(rateAt(GrowthModel::Gompertz, p, t) > rateAt(GrowthModel::Gompertz, p, t + h));
}

TEST_CASE("Logistic worked numbers") {
    // Computed from the formula by an independent script.
    checkWorked(GrowthModel::Logistic, {120, 0.04, 50},
                {{0, 14.3044}, {30, 37.2031}, {50, 60}, {60, 71.8425}, {90, 99.8422}, {120, 113.1211}});
}

TEST_CASE("Specific growth rate") {
    // 50 to 100 in 10 d: 6.931 (calculator.7search.cc). The same page prints 4.615 for 30 to 60 in 15 d; right
    // is 4.62098.
    CHECK_THAT(specificGrowthPercentPerDay(50, 100, 10), WithinAbs(6.931, 5e-4));
    CHECK_THAT(specificGrowthPercentPerDay(30, 60, 15), WithinAbs(4.62098, 5e-6));
    // H. kuda, Choo & Liew 2006 (peeref.com/works/68429989): 9.33 to 119.35 mm in 124 d; 2.0555 %/d computed.
    CHECK_THAT(specificGrowthPercentPerDay(9.33, 119.35, 124), WithinAbs(2.0555, 5e-5));
    // H. erectus weaned at 70 dpp, Lin et al. 2009: weight gain of 122.3 % in 14 d is printed as 5.7 %/d.
    CHECK_THAT(specificGrowthPercentPerDay(1.0, 2.223, 14), WithinAbs(5.7, 0.05));
}

TEST_CASE("Misra1a and BoxBOD are von Bertalanffy curves through zero") {
    // NIST StRD: b1 = L∞, b2 = K with t0 = 0.
    for (const auto* name : {"Misra1a.dat", "BoxBOD.dat"}) {
        const auto path = std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/outside/data/nist" / name;
        const NistDataset set = readNist(path.string());
        std::vector<GrowthPoint> points;
        for (std::size_t i = 0; i < set.x.size(); ++i) {
            points.push_back({set.x[i], set.y[i], 1.0});
        }
        const auto fit = fitGrowth(points, GrowthModel::VonBertalanffy, {.heldT0Days = 0.0});
        REQUIRE(fit.ok());
        INFO(name);
        CHECK_THAT(fit.value().parameters[0], WithinRel(set.certified[0], 1e-7));
        CHECK_THAT(fit.value().parameters[1], WithinRel(set.certified[1], 1e-7));
        CHECK_THAT(std::sqrt(fit.value().covariance(0, 0)), WithinRel(set.certifiedSd[0], 1e-5));
        CHECK_THAT(std::sqrt(fit.value().covariance(1, 1)), WithinRel(set.certifiedSd[1], 1e-5));
    }
}

TEST_CASE("Rat42 is a logistic curve") {
    // NIST StRD: A = b1, k = b3, ti = b2/b3; starts are the program's own.
    const auto path = std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/outside/data/nist/Rat42.dat";
    const NistDataset set = readNist(path.string());
    std::vector<GrowthPoint> points;
    for (std::size_t i = 0; i < set.x.size(); ++i) {
        points.push_back({set.x[i], set.y[i], 1.0});
    }
    const auto fit = fitGrowth(points, GrowthModel::Logistic);
    REQUIRE(fit.ok());
    CHECK_THAT(fit.value().parameters[0], WithinRel(set.certified[0], 1e-7));
    CHECK_THAT(fit.value().parameters[1], WithinRel(set.certified[2], 1e-7));
    CHECK_THAT(fit.value().parameters[2], WithinRel(set.certified[1] / set.certified[2], 1e-7));
    CHECK_THAT(fit.value().residualSdMm, WithinRel(set.residualSd, 1e-8));
}

// R 4.2.2 (nls, lme4 1.1-31): referee/growth.R wrote referee/growth.csv from R's own tables (data/r-tables).

namespace {

const std::string kHere = std::string(RINGRULE_SOURCE_DIR) + "/tests/outside/";

/// The points of an R table; `only` picks the rows of one tree, empty all.
std::vector<GrowthPoint> rPoints(const std::string& table, const std::string& y, const std::string& animal,
                                 const std::string& only = "") {
    const auto columns = readRTable(kHere + "data/r-tables/" + table + ".csv");
    std::vector<GrowthPoint> points;
    for (std::size_t i = 0; i < columns.at(y).size(); ++i) {
        if (only.empty() || columns.at(animal)[i] == only) {
            points.push_back({std::stod(columns.at("age")[i]), std::stod(columns.at(y)[i]), 1.0});
        }
    }
    return points;
}

void checkNls(const std::vector<GrowthPoint>& points, GrowthModel model, const std::string& what,
              const std::vector<std::string>& names) {
    static const RefereeFigures r(kHere + "referee/growth.csv");
    INFO(what);
    const auto fit = fitGrowth(points, model);
    REQUIRE(fit.ok());
    // nls stops at a relative offset of 1e-7 standard errors.
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto k = static_cast<Eigen::Index>(i);
        CHECK_THAT(fit.value().parameters[i], WithinRel(r.at(what, names[i]), 1e-6));
        CHECK_THAT(std::sqrt(fit.value().covariance(k, k)), WithinRel(r.at(what, "se " + names[i]), 1e-5));
    }
    CHECK_THAT(fit.value().residualSdMm, WithinRel(r.at(what, "sigma"), 1e-8));
}

/// R's models weigh all values on their scale alike. Ours do so in mm when all weights are 1, and on the scale of the
/// logarithm when they are 1/length².
void checkChoice(const std::string& table, const std::string& y, const std::string& animal, LengthScale scale) {
    static const RefereeFigures r(kHere + "referee/growth.csv");
    const auto columns = readRTable(kHere + "data/r-tables/" + table + ".csv");
    std::vector<AnimalLength> lengths;
    for (std::size_t i = 0; i < columns.at(y).size(); ++i) {
        const double length = std::stod(columns.at(y)[i]);
        lengths.push_back({std::stol(columns.at(animal)[i]), std::stod(columns.at("age")[i]), length,
                           scale == LengthScale::LogLength ? 1.0 / (length * length) : 1.0});
    }
    const auto growth = groupGrowth(lengths);
    REQUIRE(growth.ok());
    const auto penalty = [&](double k) {
        return 2.0 * k + 2.0 * k * (k + 1.0) / (static_cast<double>(lengths.size()) - k - 1.0);
    };
    int compared = 0;
    for (const GroupGrowthCandidate& one : growth.value().candidates) {
        if (one.scale != scale || one.curve == AgeCurve::Saturating) {
            continue;  // not in R's list
        }
        ++compared;
        const auto name = std::string(lengthScaleName(one.scale)) + " " + std::string(ageCurveName(one.curve));
        INFO(table << ": " << name);
        // R's figure counts the four spreads too; ours, which all candidates have alike, only β and one variance. What
        // the likelihood says must agree: some of these fits are singular, where R's optimiser stops a little short.
        const double k = one.curve == AgeCurve::Quadratic ? 3.0 : 2.0;
        const double deviance = r.at("choice " + table, name) - penalty(k + 4.0);
        CHECK_THAT(one.aicc - penalty(k + 1.0), WithinRel(deviance, 1e-6));
    }
    CHECK(compared == 4);
}

}  // namespace

TEST_CASE("Orange trees and pines by nls: pooled and each tree") {
    const std::vector<std::string> logistic{"A", "k", "ti"};
    checkNls(rPoints("Orange", "circumference", "Tree"), GrowthModel::Logistic, "Orange logistic", logistic);
    for (const std::string tree : {"1", "2", "3", "4", "5"}) {
        checkNls(rPoints("Orange", "circumference", "Tree", tree), GrowthModel::Logistic, "Orange logistic " + tree,
                 logistic);
    }
    checkNls(rPoints("Orange", "circumference", "Tree"), GrowthModel::Gompertz, "Orange gompertz", {"A", "b", "k"});
    checkNls(rPoints("Loblolly", "height", "Seed"), GrowthModel::VonBertalanffy, "Loblolly von-bertalanffy",
             {"L", "K", "t0"});
    checkNls(rPoints("Loblolly", "height", "Seed"), GrowthModel::Gompertz, "Loblolly gompertz", {"A", "b", "k"});
}

TEST_CASE("Scale and curve of a group by AICc, the Jacobian of the logarithm included") {
    for (const LengthScale scale : {LengthScale::Length, LengthScale::LogLength}) {
        checkChoice("Loblolly", "height", "Seed", scale);
    }
    for (const LengthScale scale : {LengthScale::Length, LengthScale::LogLength}) {
        checkChoice("Orange", "circumference", "Tree", scale);
    }
}

TEST_CASE("Permutation of the growth of eight boys and eight girls, and the power of a t test") {
    const RefereeFigures r(kHere + "referee/growth.csv");
    const auto columns = readRTable(kHere + "data/r-tables/Orthodont.csv");
    std::vector<double> boys;
    std::vector<double> girls;
    for (std::size_t i = 0; i < columns.at("age").size(); i += 4) {  // ages 8, 10, 12, 14 of one child
        const std::string child = columns.at("Subject")[i];
        double slope = 0.0;
        for (std::size_t k = 0; k < 4; ++k) {
            slope += (std::stod(columns.at("age")[i + k]) - 11.0) * std::stod(columns.at("distance")[i + k]) / 20.0;
        }
        if (child.substr(1) <= "08") {
            (child[0] == 'M' ? boys : girls).push_back(slope);
        }
    }
    REQUIRE((boys.size() == 8 && girls.size() == 8));
    const auto exact = permutationTest(boys, girls);
    CHECK(exact.asExtreme == static_cast<std::uint64_t>(r.at("permutation children", "asExtreme")));
    CHECK(exact.splits == static_cast<std::uint64_t>(r.at("permutation children", "splits")));
    const auto drawn = permutationTest(boys, girls, {.exactUpTo = 10, .draws = 20000, .seed = 5});
    const double standardError = std::sqrt(exact.pTwoSided * (1.0 - exact.pTwoSided) / 20000.0);
    CHECK_THAT(drawn.pTwoSided, WithinAbs(exact.pTwoSided, 4.0 * standardError));
    for (const int n : {3, 5, 12}) {
        for (const double delta : {0.5, 1.0, 2.0}) {
            const std::string name =
                std::to_string(n) + " " + (delta < 1.0 ? "0.5" : std::to_string(std::lround(delta)));
            INFO("n " << n << ", difference " << delta);
            // R computes its own non-central t with an accuracy of about 1e-9.
            CHECK_THAT(studentPower(delta / std::sqrt(2.0 / n), 2.0 * n - 2.0), WithinRel(r.at("power", name), 1e-6));
        }
    }
}
