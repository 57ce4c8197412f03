// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace ringrule {

/// Two groups of unequal variance compared (Welch 1947), first minus second.
struct WelchResult {
    double difference = 0.0;
    double standardError = 0.0;
    double t = 0.0;
    double degreesOfFreedom = 0.0;
    double pTwoSided = 1.0;
    double lower95 = 0.0;  ///< interval of the difference
    double upper95 = 0.0;
    double cohenD = 0.0;   ///< difference over the pooled standard deviation
    double hedgesG = 0.0;  ///< Cohen's d times 1 − 3/(4·df − 1), df of the pooled deviation
};
/// Precondition: two or more values in each group, not all alike.
[[nodiscard]] WelchResult welchTest(std::span<const double> first, std::span<const double> second);

/// P-values adjusted to the false discovery rate (Benjamini & Hochberg 1995), in the order given: an adjusted value at
/// or below q is a rejection at rate q.
[[nodiscard]] std::vector<double> benjaminiHochberg(std::span<const double> pValues);

}  // namespace ringrule
