// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/robust.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <vector>

#include "ringrule/statistics/distributions.h"
#include "ringrule/statistics/resampling.h"

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Median and MAD of a few numbers") {
    const std::vector<double> values{1, 1, 2, 2, 4, 6, 9};  // MAD 1: a textbook set
    CHECK(median(values) == 2.0);
    CHECK_THAT(medianAbsoluteDeviation(values), WithinRel(1.482602218505602, 1e-12));
    CHECK(median(std::vector<double>{4, 1, 3, 2}) == 2.5);
    CHECK(std::isnan(median(std::vector<double>{})));
}

TEST_CASE("Huber's mean follows the bulk") {
    CHECK_THAT(huberMean(std::vector<double>{1, 2, 3}), WithinAbs(2.0, 1e-12));
    const double centre = huberMean(std::vector<double>{9.8, 10.0, 10.1, 10.2, 9.9, 100.0});
    CHECK(centre > 9.9);
    CHECK(centre < 10.3);  // the plain mean is 25
    CHECK(huberMean(std::vector<double>{5, 5, 5, 9}) == 5.0);
}

TEST_CASE("Robust lines find an exact line under one wild point") {
    std::vector<double> x;
    std::vector<double> y;
    for (int i = 0; i < 9; ++i) {
        x.push_back(i);
        y.push_back(3.0 + 0.5 * i);
    }
    y[8] = 100.0;
    CHECK_THAT(theilSen(x, y).slope, WithinAbs(0.5, 1e-12));
    CHECK_THAT(theilSen(x, y).intercept, WithinAbs(3.0, 1e-12));
    CHECK_THAT(huberLine(x, y).slope, WithinAbs(0.5, 0.05));
}

TEST_CASE("Theil-Sen of Sen's rank limits") {
    // Four points: six pairwise slopes 1, 1, 1, 1, 1, 1 but one point moved.
    const auto line = theilSen(std::vector<double>{1, 2, 3, 4}, std::vector<double>{1, 2, 3, 5});
    // Slopes 1, 1, 4/3, 1, 3/2, 2: median (1 + 4/3)/2.
    CHECK_THAT(line.slope, WithinRel(7.0 / 6.0, 1e-12));
    CHECK(line.slopeLower == 1.0);
    CHECK(line.slopeUpper == 2.0);
}

TEST_CASE("Huber's line: the slope's error is that seen in repetition") {
    std::mt19937_64 generator(3);
    std::normal_distribution<double> normal;
    double squares = 0.0;
    double told = 0.0;
    const int scenes = 1500;
    for (int scene = 0; scene < scenes; ++scene) {
        std::vector<double> x;
        std::vector<double> y;
        for (int i = 0; i < 30; ++i) {
            x.push_back(0.1 * i);
            y.push_back(1.0 + 2.0 * x.back() + 0.2 * normal(generator));
        }
        const LineFit line = huberLine(x, y);
        squares += (line.slope - 2.0) * (line.slope - 2.0);
        told += line.slopeSd;
    }
    const double seen = std::sqrt(squares / scenes);
    // A standard deviation from 1500 has 1.8 % error; the estimator's own bias at n = 30 is within 10 %.
    CHECK_THAT(told / scenes, WithinRel(seen, 0.12));
}

TEST_CASE("Prior weights: a point of weight zero does not count") {
    const std::vector<double> x{0, 1, 2, 3};
    const std::vector<double> y{0, 1, 2, 9};
    const std::vector<double> w{1, 1, 1, 0};
    CHECK_THAT(huberLine(x, y, w).slope, WithinAbs(1.0, 1e-12));
}

TEST_CASE("Quantiles of the tables") {
    // Standard tables (from memory): z.975 = 1.95996, t.975(10) = 2.22814, chi2.95(3) = 7.81473, F.95(2,10) = 4.10282.
    CHECK_THAT(normalQuantile(0.975), WithinAbs(1.959964, 5e-7));
    CHECK_THAT(normalCdf(1.959963984540054), WithinAbs(0.975, 1e-12));
    CHECK_THAT(studentQuantile(0.975, 10), WithinAbs(2.22814, 5e-6));
    CHECK_THAT(studentTwoSided(2.2281388519649385, 10), WithinAbs(0.05, 1e-9));
    CHECK_THAT(chiSquaredQuantile(0.95, 3), WithinAbs(7.81473, 5e-6));
    CHECK_THAT(chiSquaredCdf(7.814727903251179, 3), WithinAbs(0.95, 1e-9));
    CHECK_THAT(fisherCdf(4.102821, 2, 10), WithinAbs(0.95, 1e-6));
    CHECK_THAT(studentCdf(0.0, 3.5), WithinAbs(0.5, 1e-12));
}

TEST_CASE("Wilson's interval") {
    // 0 of 10: upper limit z²/(n + z²) exactly.
    CHECK_THAT(wilsonInterval(0, 10).upper, WithinAbs(3.8414588 / 13.8414588, 1e-7));
    CHECK_THAT(wilsonInterval(0, 10).lower, WithinAbs(0.0, 1e-12));
}

TEST_CASE("Bootstrap is seeded and covers the mean's own error") {
    std::vector<double> values;
    for (int i = 0; i < 100; ++i) {
        values.push_back(i % 10);
    }
    const auto meanOf = [](std::span<const double> v) {
        double total = 0.0;
        for (double one : v) {
            total += one;
        }
        return total / static_cast<double>(v.size());
    };
    const Interval first = bootstrapInterval(values, meanOf);
    CHECK(first.lower == bootstrapInterval(values, meanOf).lower);
    // Normal theory: 4.5 ± 1.96·2.872/10; a bootstrap quantile of 2000 draws is uncertain by about 0.03.
    CHECK_THAT(first.lower, WithinAbs(4.5 - 0.563, 0.1));
    CHECK_THAT(first.upper, WithinAbs(4.5 + 0.563, 0.1));
}
