// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <optional>

#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// One animal in one session, its photos combined: a point of its growth.
struct Observation {
    std::chrono::sys_days on;
    std::optional<double> ageDays;  ///< absent when the hatch date is not known
    Estimate standardLengthMm;
    Estimate trunkDepthMm;
    Estimate trunkWidthMm;
    Estimate girthMm;
    Estimate girthRatio;
    Estimate depthRatio;
    Estimate bellyHollowPercent;
    int sidePhotos = 0;
    bool girthFair = true;  ///< false while brooding or carrying: never judge girth or depth then
};

}  // namespace ringrule
