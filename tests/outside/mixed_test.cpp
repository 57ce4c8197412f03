// SPDX-License-Identifier: GPL-3.0-or-later
// Mixed models against R 4.2.2 (lme4 1.1-31, lmerTest 3.1-3, nlme 3.1-162): referee/mixed.R wrote referee/mixed.csv
// from R's own tables (data/r-tables). All figures agree to 1e-4 relative; where both optimisers reach their last
// digits, to 1e-6.
#include "ringrule/statistics/mixed_model.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "r_table.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::string kHere = std::string(RINGRULE_SOURCE_DIR) + "/tests/outside/";
using Row = std::map<std::string, std::string>;

double number(const Row& row, const std::string& name) {
    return std::stod(row.at(name));
}

/// Rows of an R table, and groups numbered as they first appear.
struct RData {
    std::vector<Row> rows;
    std::vector<int> group;
    std::vector<std::string> names;
};

RData rData(const std::string& table, const std::string& groups) {
    const auto columns = readRTable(kHere + "data/r-tables/" + table + ".csv");
    RData result;
    std::map<std::string, int> known;
    for (std::size_t i = 0; i < columns.begin()->second.size(); ++i) {
        Row row;
        for (const auto& [name, cells] : columns) {
            row[name] = cells[i];
        }
        const auto [at, isNew] = known.try_emplace(row.at(groups), static_cast<int>(known.size()));
        if (isNew) {
            result.names.push_back(row.at(groups));
        }
        result.group.push_back(at->second);
        result.rows.push_back(std::move(row));
    }
    return result;
}

MixedData design(const RData& data, const std::function<double(const Row&)>& y,
                 const std::function<std::vector<double>(const Row&)>& x,
                 const std::function<double(const Row&)>& slope = nullptr) {
    MixedData mixed;
    mixed.group = data.group;
    for (const Row& row : data.rows) {
        mixed.y.push_back(y(row));
        for (double one : x(row)) {
            mixed.x.push_back(one);
        }
        if (slope) {
            mixed.slope.push_back(slope(row));
        }
    }
    return mixed;
}

void checkFit(const MixedFit& fit, const RefereeFigures& r, const std::string& what, double tolerance) {
    CHECK_THAT(fit.logLikelihood, WithinRel(r.at(what, "logLik"), 1e-9));
    CHECK_THAT(fit.residualSd, WithinRel(r.at(what, "residual"), tolerance));
    CHECK_THAT(fit.randomCovariance[0], WithinRel(r.at(what, "G00"), tolerance) || WithinAbs(r.at(what, "G00"), 1e-9));
    if (r.has(what, "G11")) {
        CHECK_THAT(fit.randomCovariance[1], WithinRel(r.at(what, "G01"), tolerance));
        CHECK_THAT(fit.randomCovariance[3], WithinRel(r.at(what, "G11"), tolerance));
    }
    for (std::size_t i = 0; i < fit.beta.size(); ++i) {
        const std::string n = std::to_string(i + 1);
        std::vector<double> weights(fit.beta.size(), 0.0);
        weights[i] = 1.0;
        const MixedEstimate one = contrast(fit, weights);
        INFO("fixed effect " << n);
        CHECK_THAT(one.value, WithinRel(r.at(what, "beta" + n), tolerance));
        CHECK_THAT(one.standardError, WithinRel(r.at(what, "se" + n), tolerance));
        if (r.has(what, "df" + n)) {
            CHECK_THAT(one.degreesOfFreedom, WithinRel(r.at(what, "df" + n), tolerance));
            CHECK_THAT(one.t(), WithinRel(r.at(what, "t" + n), tolerance));
            CHECK_THAT(one.pTwoSided(), WithinRel(r.at(what, "p" + n), 1e-4));
        }
    }
}

/// `boundary`: what R calls a singular fit. There R's optimiser stops at about 1e-5 of the best.
void checkBoth(const MixedData& data, const std::string& what, bool boundary = false) {
    static const RefereeFigures r(kHere + "referee/mixed.csv");
    INFO(what);
    const auto reml = fitMixed(data);
    const auto ml = fitMixed(data, MixedCriterion::MaximumLikelihood);
    REQUIRE((reml.ok() && ml.ok()));
    CHECK(reml.value().boundary == boundary);
    checkFit(reml.value(), r, what + " reml", boundary ? 1e-4 : 2e-6);
    checkFit(ml.value(), r, what + " ml", boundary ? 1e-4 : 2e-6);
}

RData chicks() {
    return rData("ChickWeight", "Chick");
}

/// Columns 1, time, diets 2 to 4, time × diets 2 to 4.
std::vector<double> timeByDiet(const Row& row) {
    const double time = number(row, "Time");
    const int diet = std::stoi(row.at("Diet"));
    std::vector<double> x{1.0, time};
    for (int d = 2; d <= 4; ++d) {
        x.push_back(diet == d ? 1.0 : 0.0);
    }
    for (int d = 2; d <= 4; ++d) {
        x.push_back(diet == d ? time : 0.0);
    }
    return x;
}

std::vector<double> ageBySex(const Row& row) {
    const double girl = row.at("Sex") == "Female" ? 1.0 : 0.0;
    const double age = number(row, "age");
    return {1.0, age, girl, age * girl};
}

double ageOf(const Row& row) {
    return number(row, "age");
}

}  // namespace

TEST_CASE("Chicks on four diets, random slopes: lme4 and lmerTest") {
    const RData data = chicks();
    const auto time = [](const Row& row) { return number(row, "Time"); };
    checkBoth(design(
                  data, [](const Row& row) { return number(row, "weight"); }, timeByDiet, time),
              "chicks");
    checkBoth(design(
                  data, [](const Row& row) { return std::log(number(row, "weight")); }, timeByDiet, time),
              "chicks log");
}

TEST_CASE("Chicks on four diets: F of all slopes, and single chicks") {
    const RefereeFigures r(kHere + "referee/mixed.csv");
    const RData data = chicks();
    const auto fit = fitMixed(design(
        data, [](const Row& row) { return number(row, "weight"); }, timeByDiet,
        [](const Row& row) { return number(row, "Time"); }));
    REQUIRE(fit.ok());
    const auto f =
        jointTest(fit.value(), {{0, 0, 0, 0, 0, 1, 0, 0}, {0, 0, 0, 0, 0, 0, 1, 0}, {0, 0, 0, 0, 0, 0, 0, 1}});
    CHECK_THAT(f.f, WithinRel(r.at("chicks reml", "F"), 1e-6));
    CHECK_THAT(f.denominator, WithinRel(r.at("chicks reml", "Fdf"), 1e-6));
    CHECK_THAT(f.p, WithinRel(r.at("chicks reml", "Fp"), 1e-5));
    for (const std::string chick : {"1", "18", "50"}) {
        std::size_t index = 0;
        while (data.names[index] != chick) {
            ++index;
        }
        CHECK_THAT(fit.value().groupEffects[index][0], WithinRel(r.at("chicks blup", "b0 " + chick), 1e-5));
        CHECK_THAT(fit.value().groupEffects[index][1], WithinRel(r.at("chicks blup", "b1 " + chick), 1e-5));
    }
}

TEST_CASE("Children's jaws: random intercept, intercept and slope, weights; lme4, lmerTest and nlme") {
    const RefereeFigures r(kHere + "referee/mixed.csv");
    const RData data = rData("Orthodont", "Subject");
    const auto distance = [](const Row& row) { return number(row, "distance"); };
    checkBoth(design(data, distance, ageBySex), "children intercept");
    const MixedData sloped = design(data, distance, ageBySex, ageOf);
    checkBoth(sloped, "children");
    MixedData weighted = sloped;
    for (const Row& row : data.rows) {
        weighted.weights.push_back(std::pow(8.0 / ageOf(row), 2));
    }
    checkBoth(weighted, "children weighted");
    const auto fit = fitMixed(sloped);
    REQUIRE(fit.ok());
    checkFit(fit.value(), r, "children reml", 2e-6);
    CHECK_THAT(fit.value().logLikelihood, WithinRel(r.at("nlme children", "logLik"), 1e-8));
    CHECK_THAT(fit.value().residualSd, WithinRel(r.at("nlme children", "residual"), 1e-4));
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK_THAT(fit.value().beta[i], WithinRel(r.at("nlme children", "beta" + std::to_string(i + 1)), 1e-6));
        CHECK_THAT(std::sqrt(fit.value().betaCovariance[5 * i]),
                   WithinRel(r.at("nlme children", "se" + std::to_string(i + 1)), 1e-4));
    }
}

TEST_CASE("Pines on the root and the logarithm of age; orange trees: lme4 and lmerTest, singular fits among them") {
    const RData pines = rData("Loblolly", "Seed");
    const auto height = [](const Row& row) { return number(row, "height"); };
    const auto root = [](const Row& row) { return std::sqrt(ageOf(row)); };
    const auto onRoot = [&](const Row& row) { return std::vector{1.0, root(row)}; };
    checkBoth(design(pines, height, onRoot), "pines root");
    checkBoth(design(pines, height, onRoot, root), "pines root slope", true);
    const auto onLog = [](const Row& row) { return std::vector{1.0, std::log(ageOf(row))}; };
    checkBoth(design(pines, height, onLog), "pines log", true);
    const RData trees = rData("Orange", "Tree");
    const auto onAge = [](const Row& row) { return std::vector{1.0, ageOf(row)}; };
    checkBoth(design(
                  trees, [](const Row& row) { return number(row, "circumference"); }, onAge, ageOf),
              "trees", true);
}
