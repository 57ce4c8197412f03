// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/sharpness.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>

namespace ringrule {
namespace {

struct Flank {
    double mean = 0.0;
    double sd = 0.0;
};

Flank flankOf(std::span<const float> light) {
    const auto count = static_cast<double>(light.size());
    Flank flank;
    flank.mean = std::accumulate(light.begin(), light.end(), 0.0) / count;
    double squares = 0.0;
    for (const float value : light) squares += (value - flank.mean) * (value - flank.mean);
    flank.sd = std::sqrt(squares / (count - 1.0));
    return flank;
}

}  // namespace

std::optional<double> edgeSigmaPx(std::span<const float> light, double stepPx) {
    constexpr std::size_t kFewest = 12;
    if (light.size() < kFewest) return std::nullopt;
    const std::size_t flank = light.size() / 5;
    const Flank first = flankOf(light.first(flank)), last = flankOf(light.last(flank));
    const double rise = last.mean - first.mean;
    if (std::abs(rise) < 6.0 * std::hypot(first.sd, last.sd) || rise == 0.0) return std::nullopt;
    // The edge stands where as much light is missing after it as is spilt before it.
    double filled = 0.0;
    for (const float value : light) filled += (value - first.mean) / rise;
    const double edge = static_cast<double>(light.size()) - filled - 0.5;  // in samples, their centres at whole numbers
    if (edge < static_cast<double>(flank) || edge > static_cast<double>(light.size() - 1 - flank)) return std::nullopt;
    double spilt = 0.0;
    for (std::size_t i = 0; i < light.size(); ++i) {
        const double share = (light[i] - first.mean) / rise;
        // The sample that holds the edge is split there.
        const double after = std::clamp(static_cast<double>(i) + 0.5 - edge, 0.0, 1.0);
        spilt += (1.0 - after) * share + after * (1.0 - share);
    }
    return std::max(0.0, spilt * stepPx / std::sqrt(2.0 / std::numbers::pi));
}

}  // namespace ringrule
