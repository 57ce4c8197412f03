// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>

#include "growth/age_curve.h"
#include "ringrule/growth/group_growth.h"

namespace ringrule {

namespace {

using Told = std::function<Interval95(const GroupGrowth&)>;

Interval95 inMm(const GroupGrowth& growth, const MixedEstimate& told) {
    return {growth.lengthOf(told.value), growth.lengthOf(told.lower95), growth.lengthOf(told.upper95)};
}

/// A figure over the curves that the data do not tell apart: each counts by its Akaike weight, and the interval holds
/// how far they lie from each other (Burnham & Anderson 2002, eq. 4.9).
Interval95 overCurves(const GroupGrowth& growth, const Told& told) {
    const Interval95 best = told(growth);
    if (growth.others.empty()) {
        return best;
    }
    std::vector<Interval95> each{best};
    Interval95 result{growth.weight * best.value, 0.0, 0.0};
    for (const GroupGrowth& other : growth.others) {
        each.push_back(told(other));
        result.value += other.weight * each.back().value;
    }
    result.lower = result.upper = result.value;
    for (std::size_t i = 0; i < each.size(); ++i) {
        const double weight = i == 0 ? growth.weight : growth.others[i - 1].weight;
        const double apart = 1.959963984540054 * (each[i].value - result.value);
        result.lower -= weight * std::hypot(each[i].value - each[i].lower, apart);
        result.upper += weight * std::hypot(each[i].upper - each[i].value, apart);
    }
    return result;
}

Interval95 curveOf(const GroupGrowth& growth, std::size_t index, double ageDays, double errorVariance) {
    return inMm(growth, predictGroup(growth.fitOf(index), index, growth.pointAt(ageDays), errorVariance));
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

Interval95 rateOnCurve(const GroupGrowth& growth, std::size_t index, double fromDays, double toDays) {
    const double earlier = curveOf(growth, index, fromDays, 0.0).value;
    const double later = curveOf(growth, index, toDays, 0.0).value;
    const bool logarithmic = growth.scale == LengthScale::LogLength;
    const MixedPoint change = combined(growth.pointAt(toDays), logarithmic ? later : 1.0, growth.pointAt(fromDays),
                                       logarithmic ? earlier : 1.0);
    return perDay(later - earlier, predictGroup(growth.fitOf(index), index, change, 0.0), toDays - fromDays);
}

Interval95 sgrOnCurve(const GroupGrowth& growth, std::size_t index, double fromDays, double toDays) {
    const double earlier = curveOf(growth, index, fromDays, 0.0).value;
    const double later = curveOf(growth, index, toDays, 0.0).value;
    const bool logarithmic = growth.scale == LengthScale::LogLength;
    const MixedPoint change = combined(growth.pointAt(toDays), logarithmic ? 100.0 : 100.0 / later,
                                       growth.pointAt(fromDays), logarithmic ? 100.0 : 100.0 / earlier);
    return perDay(100.0 * std::log(later / earlier), predictGroup(growth.fitOf(index), index, change, 0.0),
                  toDays - fromDays);
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
    return overCurves(*this,
                      [&](const GroupGrowth& one) { return inMm(one, predictMean(one.fit, one.pointAt(ageDays))); });
}

Interval95 GroupGrowth::newAnimalAt(double ageDays) const {
    return overCurves(*this, [&](const GroupGrowth& one) {
        return inMm(one, predictNewGroup(one.fit, one.pointAt(ageDays), one.errorVariance));
    });
}

std::optional<Interval95> GroupGrowth::animalAt(std::int64_t animal, double ageDays) const {
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    return overCurves(*this, [&](const GroupGrowth& one) { return curveOf(one, *index, ageDays, 0.0); });
}

std::optional<Interval95> GroupGrowth::measuredAt(std::int64_t animal, double ageDays) const {
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    return overCurves(*this, [&](const GroupGrowth& one) { return curveOf(one, *index, ageDays, one.errorVariance); });
}

std::optional<Interval95> GroupGrowth::rateMmPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    return overCurves(*this, [&](const GroupGrowth& one) { return rateOnCurve(one, *index, fromDays, toDays); });
}

std::optional<Interval95> GroupGrowth::sgrPercentPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    const auto positive = [&](const GroupGrowth& one) {
        return curveOf(one, *index, fromDays, 0.0).value > 0.0 && curveOf(one, *index, toDays, 0.0).value > 0.0;
    };
    if (!positive(*this) || !std::all_of(others.begin(), others.end(), positive)) {
        return std::nullopt;
    }
    return overCurves(*this, [&](const GroupGrowth& one) { return sgrOnCurve(one, *index, fromDays, toDays); });
}

}  // namespace ringrule
