// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace ringrule {

/// Places for labels that want to stand at `wanted`, at least `gap` apart and inside [low, high], each moved as little
/// as it can be: neighbours that collide are spread about their common mean. In the order of `wanted`. When they do not
/// fit at all, they are spaced evenly over [low, high].
[[nodiscard]] std::vector<double> spreadLabels(const std::vector<double>& wanted, double gap, double low, double high);

}  // namespace ringrule
