// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>
#include <cmath>

#include "growth/age_curve.h"
#include "ringrule/growth/group_growth.h"

namespace ringrule {

namespace {

Interval95 inMm(const GroupGrowth& growth, const MixedEstimate& told) {
    return {growth.lengthOf(told.value), growth.lengthOf(told.lower95), growth.lengthOf(told.upper95)};
}

/// later·a − earlier·b as a point of its own, for the variance of a difference on another scale (delta method).
MixedPoint combined(const MixedPoint& later, double a, const MixedPoint& earlier, double b) {
    MixedPoint result{later.x, a * later.intercept - b * earlier.intercept, a * later.slope - b * earlier.slope};
    for (std::size_t i = 0; i < result.x.size(); ++i) {
        result.x[i] = a * later.x[i] - b * earlier.x[i];
    }
    return result;
}

/// A value per day whose interval has the width, over days, of that of a linear combination.
Interval95 perDay(double change, const MixedEstimate& width, double days) {
    return {change / days, (change + width.lower95 - width.value) / days,
            (change + width.upper95 - width.value) / days};
}

}  // namespace

std::optional<std::size_t> GroupGrowth::indexOf(std::int64_t animal) const {
    const auto found = std::find(animals.begin(), animals.end(), animal);
    if (found == animals.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - animals.begin());
}

const MixedFit& GroupGrowth::fitOf(std::size_t index) const {
    return leansOnGroup || timesSeen[index] < 2 ? fit : ownFit;
}

MixedPoint GroupGrowth::pointAt(double ageDays) const {
    const double at = (alongCurve(curve, ageDays) - centre) / spread;
    MixedPoint point{{1.0, at}, 1.0, at};
    if (curve == AgeCurve::Quadratic) {
        point.x.push_back(at * at);
    }
    return point;
}

double GroupGrowth::lengthOf(double fitted) const {
    return scale == LengthScale::LogLength ? std::exp(fitted) : fitted;
}

Interval95 GroupGrowth::meanAt(double ageDays) const {
    return inMm(*this, predictMean(fit, pointAt(ageDays)));
}

Interval95 GroupGrowth::newAnimalAt(double ageDays) const {
    return inMm(*this, predictNewGroup(fit, pointAt(ageDays), errorVariance));
}

std::optional<Interval95> GroupGrowth::animalAt(std::int64_t animal, double ageDays) const {
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    return inMm(*this, predictGroup(fitOf(*index), *index, pointAt(ageDays), 0.0));
}

std::optional<Interval95> GroupGrowth::measuredAt(std::int64_t animal, double ageDays) const {
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    return inMm(*this, predictGroup(fitOf(*index), *index, pointAt(ageDays), errorVariance));
}

std::optional<Interval95> GroupGrowth::rateMmPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    const auto index = indexOf(animal);
    const auto earlier = animalAt(animal, fromDays);
    const auto later = animalAt(animal, toDays);
    if (!earlier || !later) {
        return std::nullopt;
    }
    const bool logarithmic = scale == LengthScale::LogLength;
    const MixedPoint change = combined(pointAt(toDays), logarithmic ? later->value : 1.0, pointAt(fromDays),
                                       logarithmic ? earlier->value : 1.0);
    return perDay(later->value - earlier->value, predictGroup(fitOf(*index), *index, change, 0.0), toDays - fromDays);
}

std::optional<Interval95> GroupGrowth::sgrPercentPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    const auto index = indexOf(animal);
    const auto earlier = animalAt(animal, fromDays);
    const auto later = animalAt(animal, toDays);
    if (!earlier || !later || earlier->value <= 0.0 || later->value <= 0.0) {
        return std::nullopt;
    }
    const bool logarithmic = scale == LengthScale::LogLength;
    const MixedPoint change = combined(pointAt(toDays), logarithmic ? 100.0 : 100.0 / later->value, pointAt(fromDays),
                                       logarithmic ? 100.0 : 100.0 / earlier->value);
    return perDay(100.0 * std::log(later->value / earlier->value), predictGroup(fitOf(*index), *index, change, 0.0),
                  toDays - fromDays);
}

}  // namespace ringrule
