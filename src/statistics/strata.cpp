// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numeric>
#include <random>
#include <vector>

#include "ringrule/statistics/resampling.h"
#include "statistics/draws.h"

namespace ringrule {

namespace {

/// One stratum: values less their mean, and how many of them are in the first group.
struct Stratum {
    std::vector<double> values;
    std::size_t first = 0;
    double seen = 0.0;
};

std::vector<Stratum> strataOf(std::span<const StratifiedValue> values) {
    std::map<int, std::vector<StratifiedValue>> byStratum;
    for (const StratifiedValue& one : values) {
        byStratum[one.stratum].push_back(one);
    }
    std::vector<Stratum> strata;
    for (const auto& [id, members] : byStratum) {
        Stratum stratum;
        double mean = 0.0;
        for (const StratifiedValue& one : members) {
            mean += one.value / static_cast<double>(members.size());
        }
        for (const StratifiedValue& one : members) {
            stratum.values.push_back(one.value - mean);
            stratum.first += one.inFirst ? 1U : 0U;
            stratum.seen += one.inFirst ? one.value - mean : 0.0;
        }
        if (stratum.first > 0 && stratum.first < members.size()) {
            strata.push_back(std::move(stratum));
        }
    }
    return strata;
}

/// The first group's sum under every split of one stratum.
std::vector<double> sumsOf(const Stratum& stratum) {
    std::vector<double> sums;
    std::vector<bool> chosen(stratum.values.size(), false);
    std::fill(chosen.begin(), chosen.begin() + static_cast<std::ptrdiff_t>(stratum.first), true);
    do {
        double sum = 0.0;
        for (std::size_t i = 0; i < chosen.size(); ++i) {
            sum += chosen[i] ? stratum.values[i] : 0.0;
        }
        sums.push_back(sum);
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return sums;
}

std::uint64_t asExtremeFrom(const std::vector<std::vector<double>>& sums, std::size_t at, double total, double seen) {
    if (at == sums.size()) {
        return std::abs(total) >= seen ? 1U : 0U;
    }
    std::uint64_t count = 0;
    for (double one : sums[at]) {
        count += asExtremeFrom(sums, at + 1, total + one, seen);
    }
    return count;
}

PermutationResult allWithin(const std::vector<Stratum>& strata, double seen) {
    std::vector<std::vector<double>> sums;
    PermutationResult result;
    result.exact = true;
    result.splits = 1;
    for (const Stratum& stratum : strata) {
        sums.push_back(sumsOf(stratum));
        result.splits *= sums.back().size();
    }
    result.asExtreme = asExtremeFrom(sums, 0, 0.0, seen);
    result.pTwoSided = static_cast<double>(result.asExtreme) / static_cast<double>(result.splits);
    return result;
}

PermutationResult randomWithin(std::vector<Stratum> strata, double seen, const PermutationOptions& options) {
    std::mt19937_64 generator(options.seed);
    PermutationResult result;
    result.splits = static_cast<std::uint64_t>(options.draws) + 1;
    result.asExtreme = 1;
    for (int draw = 0; draw < options.draws; ++draw) {
        double total = 0.0;
        for (Stratum& stratum : strata) {
            for (std::size_t i = 0; i < stratum.first; ++i) {
                std::swap(stratum.values[i], stratum.values[i + indexBelow(generator, stratum.values.size() - i)]);
                total += stratum.values[i];
            }
        }
        result.asExtreme += std::abs(total) >= seen ? 1U : 0U;
    }
    result.pTwoSided = static_cast<double>(result.asExtreme) / static_cast<double>(result.splits);
    return result;
}

}  // namespace

PermutationResult permutationWithinStrata(std::span<const StratifiedValue> values, const PermutationOptions& options) {
    const std::vector<Stratum> strata = strataOf(values);
    assert(!strata.empty());
    double seen = 0.0;
    double size = 0.0;
    std::uint64_t splits = 1;
    for (const Stratum& stratum : strata) {
        seen += stratum.seen;
        for (double one : stratum.values) {
            size += std::abs(one);
        }
        splits =
            std::min(options.exactUpTo + 1, splits * splitsOf(stratum.values.size(), stratum.first, options.exactUpTo));
    }
    seen = std::abs(seen) - 1e-12 * size;  // sums in another order differ by rounding; ties must still count
    return splits <= options.exactUpTo ? allWithin(strata, seen) : randomWithin(strata, seen, options);
}

double leastPermutationP(std::uint64_t first, std::uint64_t second) {
    constexpr std::uint64_t kMany = 1000000;
    const std::uint64_t splits = splitsOf(first + second, first, kMany);
    // Groups of one size can change places: two splits lie equally far apart.
    return std::min(1.0, (first == second ? 2.0 : 1.0) / static_cast<double>(splits));
}

}  // namespace ringrule
