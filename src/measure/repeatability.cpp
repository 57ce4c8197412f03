// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "ringrule/measure/repeats.h"

namespace ringrule {

Repeatability repeatability(std::span<const std::vector<double>> groups) {
    Repeatability result;
    double within = 0.0;
    double sum = 0.0;
    for (const auto& group : groups) {
        if (group.size() < 2) continue;
        double mean = 0.0;
        for (const double value : group) mean += value / static_cast<double>(group.size());
        for (const double value : group) within += (value - mean) * (value - mean);
        for (const double value : group) sum += value;
        ++result.groups;
        result.readings += static_cast<int>(group.size());
    }
    if (result.groups == 0) return result;
    const double grandMean = sum / result.readings;
    double total = 0.0;
    for (const auto& group : groups) {
        if (group.size() < 2) continue;
        for (const double value : group) total += (value - grandMean) * (value - grandMean);
    }
    result.tem = std::sqrt(within / (result.readings - result.groups));
    result.relativeTemPercent = 100.0 * result.tem / grandMean;
    const double variance = total / (result.readings - 1);
    result.reliability = variance > 0.0 ? 1.0 - result.tem * result.tem / variance : 0.0;
    result.smallestRealChange = 1.959963984540054 * std::sqrt(2.0) * result.tem;
    return result;
}

}  // namespace ringrule
