// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "ringrule/growth/observation.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/estimate.h"
#include "ringrule/statistics/propagate.h"

namespace ringrule {

/// Growth in length between two sessions.
struct GrowthRate {
    double days = 0.0;
    Estimate gainMm;
    Estimate mmPerDay;
    Estimate lengthSgrPercentPerDay;  ///< 100·(ln L2 − ln L1)/(t2 − t1), of length, not of weight
    double smallestRealGainMm = 0.0;  ///< 1.96 standard deviations of the gain: a smaller gain may be error
    [[nodiscard]] bool real() const;  ///< whether the gain exceeds it
};

/// The rate between two observations of one animal. `Separate` when the sessions had their own set-ups (the usual, and
/// the safe, case); `Common` when nothing was moved. Refuses with "no-length" or "no-time" (same day, or back in time).
[[nodiscard]] Outcome<GrowthRate> growthRate(const Observation& earlier, const Observation& later,
                                             SharedPart shared = SharedPart::Separate);

/// The specific rate in % per day between two positive sizes. Precondition: days > 0.
[[nodiscard]] double specificGrowthPercentPerDay(double sizeBefore, double sizeAfter, double days);

/// The straight-line rate (mm/day) over three or more observations by weighted least squares; the shared part counts
/// once for each session. Refuses with "too-few-points".
[[nodiscard]] Outcome<Estimate> rateOver(std::span<const Observation> observations);

}  // namespace ringrule
