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

/// What a length counts in a fit of growth: 1/sd², the sd being that of its photos and set-up and, beside it, 0.3 % of
/// the length, by which an animal never lies twice just the same. So lengths of many photos do not rule those of few.
[[nodiscard]] double lengthWeight(const Estimate& lengthMm);

}  // namespace ringrule
