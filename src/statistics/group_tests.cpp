// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/group_tests.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

struct Moments {
    double n = 0.0;
    double mean = 0.0;
    double squares = 0.0;  ///< about the mean
};

Moments moments(std::span<const double> values) {
    Moments result;
    result.n = static_cast<double>(values.size());
    result.mean = std::accumulate(values.begin(), values.end(), 0.0) / result.n;
    for (double v : values) {
        result.squares += (v - result.mean) * (v - result.mean);
    }
    return result;
}

}  // namespace

WelchResult welchTest(std::span<const double> first, std::span<const double> second) {
    assert(first.size() >= 2 && second.size() >= 2);
    const Moments a = moments(first);
    const Moments b = moments(second);
    const double varA = a.squares / (a.n - 1.0) / a.n;
    const double varB = b.squares / (b.n - 1.0) / b.n;
    WelchResult result;
    result.difference = a.mean - b.mean;
    result.standardError = std::sqrt(varA + varB);
    assert(result.standardError > 0.0);
    result.t = result.difference / result.standardError;
    result.degreesOfFreedom = std::pow(varA + varB, 2) / (varA * varA / (a.n - 1.0) + varB * varB / (b.n - 1.0));
    result.pTwoSided = studentTwoSided(result.t, result.degreesOfFreedom);
    const double half = studentQuantile(0.975, result.degreesOfFreedom) * result.standardError;
    result.lower95 = result.difference - half;
    result.upper95 = result.difference + half;
    const double pooledDf = a.n + b.n - 2.0;
    result.cohenD = result.difference / std::sqrt((a.squares + b.squares) / pooledDf);
    result.hedgesG = result.cohenD * (1.0 - 3.0 / (4.0 * pooledDf - 1.0));
    return result;
}

std::vector<double> benjaminiHochberg(std::span<const double> pValues) {
    std::vector<std::size_t> order(pValues.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return pValues[a] > pValues[b]; });
    std::vector<double> adjusted(pValues.size());
    const auto m = static_cast<double>(pValues.size());
    double least = 1.0;
    for (std::size_t k = 0; k < order.size(); ++k) {
        const double rank = m - static_cast<double>(k);
        least = std::min(least, pValues[order[k]] * m / rank);
        adjusted[order[k]] = least;
    }
    return adjusted;
}

}  // namespace ringrule
