// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/sheets/chart.h"

namespace ringrule {

/// A group's length against age as a curve with its band, or why there is none.
struct GrowthCurve {
    std::vector<ChartBandPoint> points;  ///< age in days, mm; the band holds 95 % of animals like these
    std::string refusal;
};

/// More animals than this are not fitted: it would take longer than a keeper waits.
inline constexpr std::size_t kMostFitted = 150;

/// The curve of these animals (`groupGrowth`), over the ages at which they were seen. Takes seconds for many animals:
/// call it off the window's thread.
[[nodiscard]] GrowthCurve growthCurve(const std::vector<AnimalHistory>& animals);

}  // namespace ringrule
