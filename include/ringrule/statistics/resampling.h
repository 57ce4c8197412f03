// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <span>

namespace ringrule {

struct PermutationOptions {
    std::uint64_t exactUpTo = 500000;  ///< number of splits up to which all are tried
    int draws = 20000;                 ///< random splits beyond that
    std::uint64_t seed = 1;
};

struct PermutationResult {
    double pTwoSided = 1.0;
    bool exact = false;
    std::uint64_t asExtreme = 0;  ///< splits at least as far apart as the one seen, that one included
    std::uint64_t splits = 0;     ///< splits tried
};

/// The part of all splits of the values into groups of these sizes whose means lie at least as far apart as seen.
/// Random splits count the seen one too (Phipson & Smyth 2010), so that p is never zero. Precondition: neither group
/// empty.
[[nodiscard]] PermutationResult permutationTest(std::span<const double> first, std::span<const double> second,
                                                const PermutationOptions& options = {});

/// One value of a permutation within strata.
struct StratifiedValue {
    double value = 0.0;
    bool inFirst = false;
    int stratum = 0;  ///< values are exchanged only within their stratum (a tank)
};
/// The part of all splits that keep the size of the first group within every stratum, and whose sum of the first
/// group's values, less what is expected of it, is at least as far from zero as seen. Within one stratum it equals
/// `permutationTest`. Strata with one group only say nothing. Precondition: both groups in at least one stratum.
[[nodiscard]] PermutationResult permutationWithinStrata(std::span<const StratifiedValue> values,
                                                        const PermutationOptions& options = {});

/// The least p that a permutation of groups of these sizes can give: when both are wholly apart.
[[nodiscard]] double leastPermutationP(std::uint64_t first, std::uint64_t second);

struct BootstrapOptions {
    int draws = 2000;
    double confidence = 0.95;
    std::uint64_t seed = 1;
};

struct Interval {
    double lower = 0.0;
    double upper = 0.0;
};

/// The percentile bootstrap interval of a statistic (Efron 1979). Precondition: values not empty.
[[nodiscard]] Interval bootstrapInterval(std::span<const double> values,
                                         const std::function<double(std::span<const double>)>& statistic,
                                         const BootstrapOptions& options = {});

}  // namespace ringrule
