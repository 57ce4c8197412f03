// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/resampling.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <random>
#include <utility>
#include <vector>

#include "statistics/draws.h"

namespace ringrule {

namespace {

/// How far a first group with this sum is from its expected sum; the means' distance is proportional to it.
struct Centred {
    std::vector<double> values;
    double seen = 0.0;
    double tolerance = 0.0;  ///< sums in another order differ by rounding; ties must still count
};

Centred centred(std::span<const double> first, std::span<const double> second) {
    Centred result;
    result.values.assign(first.begin(), first.end());
    result.values.insert(result.values.end(), second.begin(), second.end());
    const double mean =
        std::accumulate(result.values.begin(), result.values.end(), 0.0) / static_cast<double>(result.values.size());
    double size = 0.0;
    for (double& v : result.values) {
        v -= mean;
        size += std::abs(v);
    }
    for (std::size_t i = 0; i < first.size(); ++i) {
        result.seen += result.values[i];
    }
    result.seen = std::abs(result.seen);
    result.tolerance = 1e-12 * size;
    return result;
}

PermutationResult allSplits(const Centred& data, std::size_t k) {
    PermutationResult result;
    result.exact = true;
    std::vector<std::size_t> chosen(k);
    std::iota(chosen.begin(), chosen.end(), std::size_t{0});
    const std::size_t n = data.values.size();
    while (true) {
        double total = 0.0;
        for (std::size_t i : chosen) {
            total += data.values[i];
        }
        ++result.splits;
        result.asExtreme += std::abs(total) >= data.seen - data.tolerance ? 1U : 0U;
        std::size_t position = k;
        while (position > 0 && chosen[position - 1] == n - k + position - 1) {
            --position;
        }
        if (position == 0) {
            break;
        }
        ++chosen[position - 1];
        for (std::size_t i = position; i < k; ++i) {
            chosen[i] = chosen[i - 1] + 1;
        }
    }
    result.pTwoSided = static_cast<double>(result.asExtreme) / static_cast<double>(result.splits);
    return result;
}

PermutationResult randomSplits(Centred data, std::size_t k, const PermutationOptions& options) {
    std::mt19937_64 generator(options.seed);
    PermutationResult result;
    result.splits = static_cast<std::uint64_t>(options.draws) + 1;
    result.asExtreme = 1;
    for (int draw = 0; draw < options.draws; ++draw) {
        double total = 0.0;
        for (std::size_t i = 0; i < k; ++i) {
            std::swap(data.values[i], data.values[i + indexBelow(generator, data.values.size() - i)]);
            total += data.values[i];
        }
        result.asExtreme += std::abs(total) >= data.seen - data.tolerance ? 1U : 0U;
    }
    result.pTwoSided = static_cast<double>(result.asExtreme) / static_cast<double>(result.splits);
    return result;
}

}  // namespace

PermutationResult permutationTest(std::span<const double> first, std::span<const double> second,
                                  const PermutationOptions& options) {
    assert(!first.empty() && !second.empty());
    Centred data = centred(first, second);
    const std::uint64_t splits = splitsOf(data.values.size(), first.size(), options.exactUpTo);
    return splits <= options.exactUpTo ? allSplits(data, first.size())
                                       : randomSplits(std::move(data), first.size(), options);
}

Interval bootstrapInterval(std::span<const double> values,
                           const std::function<double(std::span<const double>)>& statistic,
                           const BootstrapOptions& options) {
    assert(!values.empty() && options.draws > 1);
    std::mt19937_64 generator(options.seed);
    std::vector<double> sample(values.size());
    std::vector<double> seen;
    for (int draw = 0; draw < options.draws; ++draw) {
        for (double& v : sample) {
            v = values[indexBelow(generator, values.size())];
        }
        seen.push_back(statistic(sample));
    }
    std::sort(seen.begin(), seen.end());
    const auto at = [&](double part) {
        return seen[static_cast<std::size_t>(std::lround(part * static_cast<double>(seen.size() - 1)))];
    };
    const double tail = 0.5 * (1.0 - options.confidence);
    return {at(tail), at(1.0 - tail)};
}

}  // namespace ringrule
