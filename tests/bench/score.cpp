// SPDX-License-Identifier: GPL-3.0-or-later
#include "score.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bench {
namespace {

double quantile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    const double place = share * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, values.size() - 1);
    return values[below] + (place - std::floor(place)) * (values[above] - values[below]);
}

}  // namespace

void Score::add(double error, double halfWidth) {
    errors.push_back(error);
    halfWidths.push_back(halfWidth);
}

std::string tableHead() {
    return "| measure | scenes | refused | mean abs. error | 95th percentile | bias | covered (Wilson 95 %) | u95 / 1.96 RMSE |\n"
           "|---|---|---|---|---|---|---|---|";
}

std::string tableRow(const std::string& label, const Score& score) {
    const auto n = static_cast<double>(score.errors.size());
    if (score.errors.empty()) return "| " + label + " | 0 | " + std::to_string(score.refused) + " | – | – | – | – | – |";
    double sum = 0.0;
    double sumAbs = 0.0;
    double sumSquares = 0.0;
    int covered = 0;
    std::vector<double> sizes;
    for (std::size_t i = 0; i < score.errors.size(); ++i) {
        const double error = score.errors[i];
        sum += error;
        sumAbs += std::abs(error);
        sumSquares += error * error;
        sizes.push_back(std::abs(error));
        if (std::abs(error) <= score.halfWidths[i]) ++covered;
    }
    const double z = 1.959963984540054;
    const double share = covered / n;
    const double centre = (share + z * z / (2 * n)) / (1 + z * z / n);
    const double half = z * std::sqrt(share * (1 - share) / n + z * z / (4 * n * n)) / (1 + z * z / n);
    char row[256];
    std::snprintf(row, sizeof row, "| %s | %zu | %d | %.3f %% | %.3f %% | %+.3f %% | %.1f %% (%.1f–%.1f) | %.2f |",
                  label.c_str(), score.errors.size(), score.refused, sumAbs / n, quantile(sizes, 0.95), sum / n,
                  100 * share, 100 * (centre - half), 100 * (centre + half),
                  quantile(score.halfWidths, 0.5) / (z * std::sqrt(sumSquares / n)));
    return row;
}

}  // namespace bench
