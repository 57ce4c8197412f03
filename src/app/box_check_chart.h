// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/optics/box_history.h"
#include "ringrule/sheets/chart.h"

namespace ringrule {

/// By how many per cent each rod read long or short, against the day, with its 95 % interval. `checks` oldest first;
/// without a rod among them the chart has no series.
[[nodiscard]] Chart rodChart(const std::vector<PastBoxCheck>& checks);

}  // namespace ringrule
