// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/least_squares.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "ringrule/statistics/autodiff.h"
#include "ringrule/statistics/distributions.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

ResidualModel lineThrough(const std::vector<double>& x, const std::vector<double>& y) {
    return differentiated<2>([x, y](const auto& p) {
        std::vector<std::decay_t<decltype(p[0])>> r;
        for (std::size_t i = 0; i < x.size(); ++i) {
            r.push_back(p[0] + p[1] * x[i] - y[i]);
        }
        return r;
    });
}

ResidualModel saturating(const std::vector<double>& x, const std::vector<double>& y) {
    return differentiated<2>([x, y](const auto& p) {
        using std::exp;
        std::vector<std::decay_t<decltype(p[0])>> r;
        for (std::size_t i = 0; i < x.size(); ++i) {
            r.push_back(p[0] * (1.0 - exp(-p[1] * x[i])) - y[i]);
        }
        return r;
    });
}

Eigen::VectorXd vec(std::initializer_list<double> values) {
    Eigen::VectorXd v(static_cast<Eigen::Index>(values.size()));
    Eigen::Index i = 0;
    for (double value : values) {
        v[i++] = value;
    }
    return v;
}

}  // namespace

TEST_CASE("A straight line has its closed-form solution and errors") {
    const std::vector<double> x{0, 1, 2, 3};
    const std::vector<double> y{1.0, 3.1, 4.9, 7.2};
    const auto fit = solveLeastSquares(lineThrough(x, y), {vec({0, 0})});
    REQUIRE(fit.ok());
    // Normal equations by hand: Σ(x−1.5)(y−4.05) = 10.2, Σ(x−1.5)² = 5.
    CHECK_THAT(fit.value().parameters[1], WithinRel(2.04, 1e-12));
    CHECK_THAT(fit.value().parameters[0], WithinRel(0.99, 1e-12));
    const double rss = 0.01 * 0.01 + 0.07 * 0.07 + 0.17 * 0.17 + 0.09 * 0.09;
    CHECK_THAT(fit.value().residualSumOfSquares, WithinRel(rss, 1e-10));
    CHECK_THAT(fit.value().sd(1), WithinRel(std::sqrt(rss / 2.0 / 5.0), 1e-10));
}

TEST_CASE("Exact derivatives agree with central differences") {
    const auto model = saturating({1, 4, 9}, {10, 20, 30});
    const Eigen::VectorXd at = vec({40.0, 0.2});
    const auto exact = model(at);
    REQUIRE(exact);
    for (Eigen::Index j = 0; j < 2; ++j) {
        const double h = 1e-5 * at[j];  // cube root of the rounding unit: both errors near 1e-10
        Eigen::VectorXd above = at;
        Eigen::VectorXd below = at;
        above[j] += h;
        below[j] -= h;
        const Eigen::VectorXd numeric = (model(above)->residuals - model(below)->residuals) / (2.0 * h);
        CHECK((numeric - exact->jacobian.col(j)).cwiseAbs().maxCoeff() < 1e-7);
    }
}

TEST_CASE("What the data do not tell apart is refused") {
    SECTION("all x equal") {
        const auto fit = solveLeastSquares(lineThrough({2, 2, 2, 2}, {1, 2, 3, 4}), {vec({0, 0})});
        REQUIRE_FALSE(fit.ok());
        CHECK(fit.refusal().reason == "not-identified");
    }
    SECTION("as many parameters as points") {
        const auto fit = solveLeastSquares(lineThrough({1, 2}, {1, 2}), {vec({0, 0})});
        REQUIRE_FALSE(fit.ok());
        CHECK(fit.refusal().reason == "too-few-points");
    }
    SECTION("a parameter that has lost its effect") {
        // At a rate of 90 the curve has reached its height before the first point.
        const auto fit = solveLeastSquares(saturating({1, 2, 3, 4}, {10, 11, 9, 10}), {vec({10, 90})});
        REQUIRE_FALSE(fit.ok());
        CHECK(fit.refusal().reason == "not-identified");
    }
    SECTION("no start where the model is defined") {
        const ResidualModel never = [](const Eigen::VectorXd&) { return std::optional<Linearised>{}; };
        const auto fit = solveLeastSquares(never, {vec({0})});
        REQUIRE_FALSE(fit.ok());
        CHECK(fit.refusal().reason == "no-fit");
    }
}

TEST_CASE("A bound holds its parameter and leaves the others' errors") {
    const std::vector<double> x{0, 1, 2, 3};
    const std::vector<double> y{1.0, 3.1, 4.9, 7.2};
    LeastSquaresOptions options;
    options.bounds.lower = vec({-10, -10});
    options.bounds.upper = vec({10, 1.5});
    const auto fit = solveLeastSquares(lineThrough(x, y), {vec({0, 0})}, options);
    REQUIRE(fit.ok());
    CHECK_THAT(fit.value().parameters[1], WithinAbs(1.5, 1e-9));
    CHECK(fit.value().atBound[1]);
    CHECK_FALSE(fit.value().atBound[0]);
    CHECK(fit.value().sd(1) == 0.0);
    CHECK_THAT(fit.value().parameters[0], WithinRel(4.05 - 1.5 * 1.5, 1e-8));
    CHECK(fit.value().degreesOfFreedom == 3);
}

TEST_CASE("The best of several starts wins") {
    // Residual (p² − 1)² + tilt has two minima; the better one is near −1.
    const ResidualModel twoValleys = differentiated<1>([](const auto& p) {
        using T = std::decay_t<decltype(p[0])>;
        return std::vector<T>{p[0] * p[0] - 1.0, 0.3 * (p[0] + 1.0)};
    });
    const auto fit = solveLeastSquares(twoValleys, {vec({0.9}), vec({-0.5})});
    REQUIRE(fit.ok());
    CHECK(fit.value().startUsed == 1);
    CHECK_THAT(fit.value().parameters[0], WithinAbs(-1.0, 1e-9));
}

TEST_CASE("A robust loss ignores a wild point") {
    const std::vector<double> x{0, 1, 2, 3, 4, 5};
    const std::vector<double> y{0, 1, 2, 3, 4, 50};
    LeastSquaresOptions options;
    options.huberWidth = 0.1;
    const auto fit = solveLeastSquares(lineThrough(x, y), {vec({0, 0})}, options);
    REQUIRE(fit.ok());
    CHECK_THAT(fit.value().parameters[1], WithinAbs(1.0, 0.1));
}

TEST_CASE("Intervals of a saturating curve cover the truth") {
    std::mt19937_64 generator(5);
    std::normal_distribution<double> normal(0.0, 1.0);
    const std::vector<double> x{1, 2, 3, 4, 6, 8, 11, 15};
    int covered = 0;
    const int scenes = 2000;
    for (int scene = 0; scene < scenes; ++scene) {
        std::vector<double> y;
        for (double one : x) {
            y.push_back(100.0 * (1.0 - std::exp(-0.2 * one)) + normal(generator));
        }
        const auto fit = solveLeastSquares(saturating(x, y), {vec({90, 0.3})});
        REQUIRE(fit.ok());
        const double half = studentQuantile(0.975, fit.value().degreesOfFreedom) * fit.value().sd(0);
        covered += std::abs(fit.value().parameters[0] - 100.0) <= half ? 1 : 0;
    }
    const auto wilson = wilsonInterval(covered, scenes);
    INFO("covered " << covered << " of " << scenes);
    CHECK(wilson.upper > 0.93);
    CHECK(wilson.lower < 0.97);
}
