// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/mixed_model.h"

#include <Eigen/LU>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "ringrule/statistics/resampling.h"
#include "statistics/mixed_terms.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

struct Truth {
    int groups = 8;
    int times = 6;
    double interceptSd = 2.0;
    double slopeSd = 0.5;
    double errorSd = 1.0;
};

/// Groups seen at times 0, 1, …, half of them with a slope of their own kind: columns 1, t, kind, kind·t.
MixedData simulated(const Truth& truth, unsigned seed, bool withSlope = true) {
    std::mt19937_64 generator(seed);
    std::normal_distribution<double> normal;
    MixedData data;
    for (int g = 0; g < truth.groups; ++g) {
        const double intercept = 10.0 + truth.interceptSd * normal(generator);
        const double slope = 3.0 + truth.slopeSd * normal(generator);
        const double kind = g % 2;
        for (int t = 0; t < truth.times; ++t) {
            data.y.push_back(intercept + slope * t + truth.errorSd * normal(generator));
            data.x.insert(data.x.end(), {1.0, static_cast<double>(t), kind, kind * t});
            data.group.push_back(g);
            if (withSlope) {
                data.slope.push_back(t);
            }
        }
    }
    return data;
}

/// The data as sums, in coordinates of their own: for derivatives only.
MixedSums sumsOf(const MixedData& data) {
    MixedSums sums;
    sums.hasSlope = true;
    sums.rows = static_cast<int>(data.y.size());
    sums.groups.assign(8, {Eigen::Matrix2d::Zero(), Matrix2X::Zero(2, 4), Eigen::Vector2d::Zero()});
    sums.xWx = Eigen::MatrixXd::Zero(4, 4);
    sums.xWy = Eigen::VectorXd::Zero(4);
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        const Eigen::Map<const Eigen::VectorXd> x(data.x.data() + 4 * row, 4);
        const Eigen::Vector2d z(1.0, data.slope[row]);
        MixedSums::Group& group = sums.groups[static_cast<std::size_t>(data.group[row])];
        group.zWz += z * z.transpose();
        group.zWx += z * x.transpose();
        group.zWy += data.y[row] * z;
        sums.xWx += x * x.transpose();
        sums.xWy += data.y[row] * x;
        sums.yWy += data.y[row] * data.y[row];
    }
    return sums;
}

std::string reasonOf(const MixedData& data) {
    const auto fit = fitMixed(data);
    return fit ? "" : fit.refusal().reason;
}

}  // namespace

TEST_CASE("The deviance's derivatives against central differences") {
    const MixedSums sums = sumsOf(simulated({}, 3));
    for (const auto criterion : {MixedCriterion::RestrictedLikelihood, MixedCriterion::MaximumLikelihood}) {
        const Eigen::Vector3d at(1.7, -0.3, 0.6);
        const MixedTerms terms = mixedTerms(sums, at, criterion, true);
        const double step = 1e-4;  // truncation step² and rounding 1e-13/step both below 1e-7
        // Gradient of the profiled deviance; the Hessian over θ and σ² gives that of the profile by its Schur
        // complement.
        const Eigen::Vector3d cross = terms.hessian.col(3).head(3);
        const Eigen::Matrix3d profile =
            terms.hessian.topLeftCorner(3, 3) - cross * cross.transpose() / terms.hessian(3, 3);
        for (int i = 0; i < 3; ++i) {
            Eigen::Vector3d low = at;
            Eigen::Vector3d high = at;
            low[i] -= step;
            high[i] += step;
            const MixedTerms below = mixedTerms(sums, low, criterion, true);
            const MixedTerms above = mixedTerms(sums, high, criterion, true);
            CHECK_THAT(terms.gradient[i], WithinAbs((above.deviance - below.deviance) / (2.0 * step), 1e-6));
            for (int j = 0; j < 3; ++j) {
                CHECK_THAT(profile(i, j), WithinAbs((above.gradient[j] - below.gradient[j]) / (2.0 * step), 1e-5));
            }
            const Eigen::MatrixXd changed = (above.betaShape.inverse() - below.betaShape.inverse()) / (2.0 * step);
            CHECK((changed + terms.precisionByTheta[static_cast<std::size_t>(i)]).cwiseAbs().maxCoeff() < 1e-5);
        }
    }
}

TEST_CASE("Balanced groups without slopes: the closed form of the analysis of variance") {
    const MixedData from = simulated({.groups = 6, .times = 5}, 5, false);
    MixedData data{from.y, std::vector<double>(from.y.size(), 1.0), {}, {}, from.group};
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        data.y[row] -= 3.0 * from.x[4 * row + 1];
    }
    std::vector<double> means(6, 0.0);
    double all = 0.0;
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        means[static_cast<std::size_t>(data.group[row])] += data.y[row] / 5.0;
        all += data.y[row] / 30.0;
    }
    double within = 0.0;
    double between = 0.0;
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        const double mean = means[static_cast<std::size_t>(data.group[row])];
        within += (data.y[row] - mean) * (data.y[row] - mean) / 24.0;
        between += (mean - all) * (mean - all) / 5.0;
    }
    const auto fit = fitMixed(data);
    REQUIRE(fit.ok());
    CHECK_FALSE(fit.value().boundary);
    CHECK_THAT(fit.value().residualSd, WithinRel(std::sqrt(within), 1e-9));
    CHECK_THAT(fit.value().interceptSd(), WithinRel(std::sqrt((between - within) / 5.0), 1e-8));
    const auto mean = contrast(fit.value(), std::vector{1.0});
    CHECK_THAT(mean.value, WithinRel(all, 1e-12));
    CHECK_THAT(mean.standardError, WithinRel(std::sqrt(between / 30.0), 1e-8));
    CHECK_THAT(mean.degreesOfFreedom, WithinRel(5.0, 1e-6));
}

TEST_CASE("Balanced slopes of two kinds: the t test of each group's own slope") {
    const Truth truth;
    const MixedData data = simulated(truth, 11);
    const auto fit = fitMixed(data);
    REQUIRE(fit.ok());
    REQUIRE_FALSE(fit.value().boundary);
    std::vector<double> slopes(8, 0.0);
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        slopes[static_cast<std::size_t>(data.group[row])] += (data.slope[row] - 2.5) * data.y[row] / 17.5;
    }
    double means[2]{};
    for (std::size_t g = 0; g < 8; ++g) {
        means[g % 2] += slopes[g] / 4.0;
    }
    double squares = 0.0;
    for (std::size_t g = 0; g < 8; ++g) {
        squares += std::pow(slopes[g] - means[g % 2], 2);
    }
    const auto kind = contrast(fit.value(), std::vector{0.0, 0.0, 0.0, 1.0});
    CHECK_THAT(kind.value, WithinAbs(means[1] - means[0], 1e-10));
    CHECK_THAT(kind.standardError, WithinRel(std::sqrt(squares / 6.0 * 0.5), 1e-8));
    CHECK_THAT(kind.degreesOfFreedom, WithinRel(6.0, 1e-6));
    const auto joint = jointTest(fit.value(), {{0.0, 0.0, 0.0, 1.0}});
    CHECK_THAT(joint.f, WithinRel(kind.t() * kind.t(), 1e-9));
    CHECK_THAT(joint.p, WithinRel(kind.pTwoSided(), 1e-7));
}

TEST_CASE("Groups from their own values alone: each one's least-squares line, with the scatter of all") {
    for (const bool kinds : {true, false}) {
        MixedData data = simulated({}, 17);
        if (!kinds) {  // an intercept, time and its square: the square takes a degree of freedom, the kinds none
            for (std::size_t row = 0; row < data.y.size(); ++row) {
                data.x[4 * row + 2] = data.slope[row] * data.slope[row];
                data.x[4 * row + 3] = 0.0;
            }
            std::vector<double> three;
            for (std::size_t i = 0; i < data.x.size(); ++i) {
                if (i % 4 < 3) {
                    three.push_back(data.x[i]);
                }
            }
            data.x = three;
        }
        const auto fit = fitOwnEffects(data);
        REQUIRE(fit.ok());
        double squares = 0.0;
        double slopeOfThird = 0.0;
        for (std::size_t g = 0; g < 8; ++g) {
            double mean = 0.0;
            double slope = 0.0;
            for (std::size_t t = 0; t < 6; ++t) {
                mean += data.y[6 * g + t] / 6.0;
                slope += (static_cast<double>(t) - 2.5) * data.y[6 * g + t] / 17.5;
            }
            for (std::size_t t = 0; t < 6; ++t) {
                squares += std::pow(data.y[6 * g + t] - mean - slope * (static_cast<double>(t) - 2.5), 2);
            }
            slopeOfThird = g == 2 ? slope : slopeOfThird;
        }
        const MixedPoint perUnit =
            kinds ? MixedPoint{{0.0, 1.0, 0.0, 0.0}, 0.0, 1.0} : MixedPoint{{0.0, 1.0, 5.0}, 0.0, 1.0};
        const auto slope = predictGroup(fit.value(), 2, perUnit, 0.0);
        // A spread of 1e4 residual deviations still pulls by 1e-8.
        CHECK_THAT(slope.value, WithinRel(slopeOfThird, 1e-6));
        CHECK_THAT(slope.degreesOfFreedom, WithinRel(kinds ? 32.0 : 31.0, 1e-6));
        if (kinds) {
            CHECK_THAT(slope.standardError, WithinRel(std::sqrt(squares / 32.0 / 17.5), 1e-5));
        }
    }
}

TEST_CASE("Units and origins do not matter") {
    const MixedData data = simulated({}, 21);
    MixedData moved = data;
    const double origin = 1e5;
    const double unit = 3e-4;
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        moved.y[row] = 7e5 + 2500.0 * data.y[row];
        moved.slope[row] = origin + unit * data.slope[row];
        moved.x[4 * row + 1] = moved.slope[row];
        moved.x[4 * row + 3] = moved.x[4 * row + 2] * moved.slope[row];
    }
    const auto one = fitMixed(data);
    const auto other = fitMixed(moved);
    REQUIRE((one.ok() && other.ok()));
    // A covariate of 1e5 ± 5e-4 keeps seven digits of its differences.
    CHECK_THAT(other.value().slopeSd() * unit / 2500.0, WithinRel(one.value().slopeSd(), 1e-5));
    CHECK_THAT(other.value().residualSd / 2500.0, WithinRel(one.value().residualSd, 1e-6));
    const auto a = contrast(one.value(), std::vector{0.0, 0.0, 0.0, 1.0});
    const auto b = contrast(other.value(), std::vector{0.0, 0.0, 0.0, 1.0});
    CHECK_THAT(b.t(), WithinRel(a.t(), 1e-5));
    CHECK_THAT(b.degreesOfFreedom, WithinRel(a.degreesOfFreedom, 1e-4));
    const auto here = predictGroup(one.value(), 2, {{1.0, 4.0, 0.0, 0.0}, 1.0, 4.0}, 0.0);
    const double at = origin + 4.0 * unit;
    const auto there = predictGroup(other.value(), 2, {{1.0, at, 0.0, 0.0}, 1.0, at}, 0.0);
    CHECK_THAT((there.value - 7e5) / 2500.0, WithinRel(here.value, 1e-5));
    CHECK_THAT(there.standardError / 2500.0, WithinRel(here.standardError, 1e-4));
    CHECK_THAT(there.degreesOfFreedom, WithinRel(here.degreesOfFreedom, 1e-3));
}

TEST_CASE("A spread between groups that is not there is told as a boundary") {
    // Two values a group, one high and one low everywhere: groups are more alike than chance makes them.
    MixedData data;
    for (int g = 0; g < 6; ++g) {
        for (double side : {-1.0, 1.0}) {
            data.y.push_back(side + 0.01 * g);
            data.x.push_back(1.0);
            data.group.push_back(g);
        }
    }
    const auto fit = fitMixed(data);
    REQUIRE(fit.ok());
    CHECK(fit.value().boundary);
    CHECK(fit.value().interceptSd() == 0.0);
    CHECK(std::isnan(fit.value().correlation()));
}

TEST_CASE("A mixed model that the data cannot carry is refused, with the reason") {
    const MixedData good = simulated({}, 1);
    CHECK(reasonOf(good).empty());
    CHECK(reasonOf({}) == "too-few-groups");
    MixedData one = good;
    std::fill(one.group.begin(), one.group.end(), 0);
    CHECK(reasonOf(one) == "too-few-groups");
    CHECK(reasonOf(simulated({.times = 2}, 1)) == "no-repeats");
    MixedData dependent = good;
    for (std::size_t row = 0; row < good.y.size(); ++row) {
        dependent.x[4 * row + 3] = 2.0 * dependent.x[4 * row] - dependent.x[4 * row + 1];
    }
    CHECK(reasonOf(dependent) == "not-identified");
    MixedData still = good;
    for (std::size_t row = 0; row < good.y.size(); ++row) {
        still.slope[row] = still.group[row];
    }
    CHECK(reasonOf(still) == "not-identified");
    CHECK(reasonOf(simulated({.errorSd = 0.0}, 1)) == "no-scatter");
    CHECK(reasonOf(simulated({.interceptSd = 0.0, .slopeSd = 0.0, .errorSd = 0.0}, 1)) == "no-scatter");
}

TEST_CASE("Permutation within strata") {
    const std::vector<double> first{3.1, 4.7, 5.0, 6.2};
    const std::vector<double> second{2.0, 3.3, 4.1};
    std::vector<StratifiedValue> values;
    for (double one : first) {
        values.push_back({one, true, 0});
    }
    for (double one : second) {
        values.push_back({one, false, 0});
    }
    const auto plain = permutationTest(first, second);
    const auto one = permutationWithinStrata(values);
    CHECK(one.exact);
    CHECK(one.asExtreme == plain.asExtreme);
    CHECK(one.splits == plain.splits);
    // Two tanks, {1 | 3} and {10 | 14, 16}: sums of the first group less expectation are ∓1 and −10/3, 2/3, 8/3; of the
    // six totals only −13/3 is as far out as −1 − 10/3.
    const std::vector<StratifiedValue> tanks{
        {1, true, 1}, {3, false, 1}, {10, true, 2}, {14, false, 2}, {16, false, 2}};
    const auto two = permutationWithinStrata(tanks);
    CHECK(two.splits == 6);
    CHECK(two.asExtreme == 1);
    const auto drawn = permutationWithinStrata(tanks, {.exactUpTo = 2, .draws = 20000, .seed = 3});
    CHECK_FALSE(drawn.exact);
    CHECK_THAT(drawn.pTwoSided, WithinAbs(1.0 / 6.0, 4.0 * std::sqrt(5.0 / 36.0 / 20000.0)));
    CHECK(leastPermutationP(3, 3) == 0.1);
    CHECK(leastPermutationP(2, 3) == 0.1);
}
