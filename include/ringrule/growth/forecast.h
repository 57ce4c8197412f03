// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/growth/fit.h"
#include "ringrule/growth/group_growth.h"
#include "ringrule/outcome.h"

namespace ringrule {

enum class ForecastBasis {
    OwnCurve,   ///< the animal's own growth curve
    GroupCurve  ///< its place among its group (mixed model), because it was seen too seldom
};

/// A length expected at an age.
struct LengthForecast {
    ForecastBasis basis = ForecastBasis::OwnCurve;
    double ageDays = 0.0;
    Interval95 lengthMm;      ///< the animal's own curve
    Interval95 measuredMm;    ///< what one photo session would show
    bool beyondData = false;  ///< later than anything seen: rests on growth going on as it did
};

/// When a length is reached. Days of age; an absent end is open: before the first age seen, or after the last that can
/// be forecast.
struct WhenReached {
    ForecastBasis basis = ForecastBasis::OwnCurve;
    double lengthMm = 0.0;
    std::optional<double> earliestDays;
    std::optional<double> expectedDays;
    std::optional<double> latestDays;
    bool already = false;  ///< expected before the last age seen
    std::string sentence;
};

/// What forecasts rest on: the animal's own lengths, or its group's growth.
class GrowthForecast {
public:
    /// From an animal's own lengths: a curve is fitted when it was seen at eight or more ages, its models weighed by
    /// AICc (Burnham & Anderson 2002) so that the interval holds the choice among them; otherwise from `group`, when it
    /// holds the animal. Refuses with "not-identified" (too few lengths and no group), "no-length" or as the fits do.
    [[nodiscard]] static Outcome<GrowthForecast> of(std::span<const GrowthPoint> own, const GroupGrowth* group,
                                                    std::int64_t animal);

    [[nodiscard]] ForecastBasis basis() const;
    /// The last age that can be forecast: half as long again as was seen.
    [[nodiscard]] double horizonDays() const;
    /// Length at an age. Refuses with "too-far-ahead" beyond the horizon or "before-first" before the first age seen.
    [[nodiscard]] Outcome<LengthForecast> lengthAtDays(double ageDays) const;
    /// When a length is reached: the expected age, and the ages at which the upper and the lower end of the interval
    /// reach it. Refuses with "not-reached" when even the upper end does not within the horizon.
    [[nodiscard]] Outcome<WhenReached> reaching(double lengthMm) const;

private:
    GrowthForecast() = default;
    [[nodiscard]] Interval95 curveAt(double ageDays) const;
    [[nodiscard]] Interval95 measuredAt(double ageDays) const;

    std::vector<GrowthFit> fits_;  ///< own curve: models with their weights
    std::vector<double> fitWeights_;
    GrowthPoint latest_;         ///< the middle of the latest sessions: length and weight
    bool scatterGrows_ = false;  ///< weights differ: errors go with length
    std::optional<GroupGrowth> group_;
    std::int64_t animal_ = 0;
    double firstDays_ = 0.0;
    double lastDays_ = 0.0;
};

}  // namespace ringrule
