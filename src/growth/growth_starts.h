// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>
#include <span>
#include <vector>

#include "ringrule/growth/fit.h"

namespace ringrule {

/// Parameters to start a fit from, for several guesses of how far the data are from levelling off.
[[nodiscard]] std::vector<Eigen::VectorXd> growthStarts(std::span<const GrowthPoint> points, GrowthModel model);

}  // namespace ringrule
