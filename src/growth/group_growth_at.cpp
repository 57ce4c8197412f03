// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>

#include "growth/age_curve.h"
#include "growth/own_bends.h"
#include "ringrule/growth/group_growth.h"
#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

using Told = std::function<Interval95(const GroupGrowth&)>;

Interval95 inMm(const GroupGrowth& growth, const MixedEstimate& told) {
    return {growth.lengthOf(told.value), growth.lengthOf(told.lower95), growth.lengthOf(told.upper95)};
}

/// What one curve says, with its Akaike weight.
struct Weighted {
    double weight = 1.0;
    Interval95 told;
};

/// The end of the interval that leaves out 2.5 % over all curves, their tails taken as those of normal distributions
/// with the curves' own intervals.
double endOf(const std::vector<Weighted>& all, bool upper) {
    constexpr double kZ95 = 1.959963984540054;
    double low = upper ? all.front().told.upper : all.front().told.lower;
    double high = low;
    for (const Weighted& one : all) {
        const double end = upper ? one.told.upper : one.told.lower;
        low = std::min(low, end);
        high = std::max(high, end);
    }
    for (int i = 0; i < 40 && high > low; ++i) {
        const double middle = 0.5 * (low + high);
        double below = 0.0;
        for (const Weighted& one : all) {
            const double half =
                middle < one.told.value ? one.told.value - one.told.lower : one.told.upper - one.told.value;
            below += one.weight * 0.5 * std::erfc(-(middle - one.told.value) / half * kZ95 / std::sqrt(2.0));
        }
        (below < (upper ? 0.975 : 0.025) ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// A figure over the curves that the data do not tell apart: each counts by its Akaike weight, also in the tails (Turek
/// & Fletcher 2012).
Interval95 overCurves(const GroupGrowth& growth, const Told& told) {
    const Interval95 best = told(growth);
    if (growth.others.empty()) {
        return best;
    }
    std::vector<Weighted> all{{growth.weight, best}};
    Interval95 result{growth.weight * best.value, 0.0, 0.0};
    for (const GroupGrowth& other : growth.others) {
        all.push_back({other.weight, told(other)});
        result.value += other.weight * all.back().told.value;
    }
    result.lower = endOf(all, false);
    result.upper = endOf(all, true);
    return result;
}

/// a·(the fitted value at one age) − b·(that at another), of one animal.
struct Ages {
    double later = 0.0;
    double a = 1.0;
    double earlier = 0.0;
    double b = 0.0;
};

/// Satterthwaite's degrees of freedom fall toward nothing where the spread of growth between animals happens to come
/// out near zero, and the interval would then have no end; a group knows its spread at least by its animals.
MixedEstimate leaning(const GroupGrowth& growth, MixedEstimate told) {
    const double least = static_cast<double>(growth.animals.size()) - 2.0;
    if (growth.leansOnGroup && told.degreesOfFreedom < least) {
        told.degreesOfFreedom = least;
        const double half = studentQuantile(0.975, least) * told.standardError;
        told.lower95 = told.value - half;
        told.upper95 = told.value + half;
    }
    return told;
}

MixedEstimate toldOf(const GroupGrowth& growth, std::size_t index, const Ages& ages, double errorVariance) {
    if (growth.bends && growth.bends->of[index].told) {
        std::array<double, 3> x = growth.bendAt(ages.later);
        const std::array<double, 3> earlier = growth.bendAt(ages.earlier);
        for (std::size_t i = 0; i < x.size(); ++i) {
            x[i] = ages.a * x[i] - ages.b * earlier[i];
        }
        return predictBend(*growth.bends, index, x, errorVariance);
    }
    const MixedPoint later = growth.pointAt(ages.later);
    const MixedPoint earlier = growth.pointAt(ages.earlier);
    MixedPoint x{later.x, ages.a * later.intercept - ages.b * earlier.intercept,
                 ages.a * later.slope - ages.b * earlier.slope};
    for (std::size_t i = 0; i < x.x.size(); ++i) {
        x.x[i] = ages.a * later.x[i] - ages.b * earlier.x[i];
    }
    return leaning(growth, predictGroup(growth.fitOf(index), index, x, errorVariance));
}

Interval95 curveOf(const GroupGrowth& growth, std::size_t index, double ageDays, double errorVariance) {
    return inMm(growth, toldOf(growth, index, {ageDays, 1.0, ageDays, 0.0}, errorVariance));
}

/// A value per day whose interval has the width, over days, of that of a linear combination.
Interval95 perDay(double change, const MixedEstimate& width, double days) {
    return {change / days, (change + width.lower95 - width.value) / days,
            (change + width.upper95 - width.value) / days};
}

/// On the scale of the logarithm by the delta method.
Interval95 rateOnCurve(const GroupGrowth& growth, std::size_t index, double fromDays, double toDays) {
    const double earlier = curveOf(growth, index, fromDays, 0.0).value;
    const double later = curveOf(growth, index, toDays, 0.0).value;
    const bool logarithmic = growth.scale == LengthScale::LogLength;
    const Ages change{toDays, logarithmic ? later : 1.0, fromDays, logarithmic ? earlier : 1.0};
    return perDay(later - earlier, toldOf(growth, index, change, 0.0), toDays - fromDays);
}

Interval95 sgrOnCurve(const GroupGrowth& growth, std::size_t index, double fromDays, double toDays) {
    const double earlier = curveOf(growth, index, fromDays, 0.0).value;
    const double later = curveOf(growth, index, toDays, 0.0).value;
    const bool logarithmic = growth.scale == LengthScale::LogLength;
    const Ages change{toDays, logarithmic ? 100.0 : 100.0 / later, fromDays, logarithmic ? 100.0 : 100.0 / earlier};
    return perDay(100.0 * std::log(later / earlier), toldOf(growth, index, change, 0.0), toDays - fromDays);
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
    const double since = ageDays - youngestDays;
    const double at = (alongCurve(curve, ageDays, since, perDay) - centre) / spread;
    MixedPoint point{{1.0, at}, 1.0, at};
    if (curve == AgeCurve::Quadratic) {
        point.x.push_back(at * at);
    } else if (curve == AgeCurve::Saturating) {
        point.x.push_back(saturationByRate(since, perDay) / spread);
    }
    return point;
}

std::array<double, 3> GroupGrowth::bendAt(double ageDays) const {
    const MixedPoint point = pointAt(ageDays);
    return {1.0, point.x[1], point.x.size() > 2 ? point.x[2] : point.x[1] * point.x[1]};
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
