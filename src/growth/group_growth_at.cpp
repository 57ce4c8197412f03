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

Interval95 inMm(const GroupGrowth& growth, const MixedEstimate& told) {
    return {growth.lengthOf(told.value), growth.lengthOf(told.lower95), growth.lengthOf(told.upper95)};
}

/// What one curve says, under one spread of bends, with the weight of both.
struct Weighted {
    double weight = 1.0;
    Interval95 told;
};

/// The end of the interval that leaves out 2.5 % over all that is told, their tails taken as those of normal
/// distributions with the curves' own intervals.
double endOf(const std::vector<Weighted>& all, bool upper) {
    constexpr double kZ95 = 1.959963984540054;
    double low = upper ? all.front().told.upper : all.front().told.lower;
    double high = low;
    for (const Weighted& one : all) {
        const double end = upper ? one.told.upper : one.told.lower;
        low = std::min(low, end);
        high = std::max(high, end);
    }
    if (!std::isfinite(high)) {
        return high;
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

/// All counted by their weights, also in the tails (model-averaged tail area, Turek & Fletcher 2012).
Interval95 over(const std::vector<Weighted>& all) {
    if (all.size() == 1) {
        return all.front().told;
    }
    Interval95 result{0.0, endOf(all, false), endOf(all, true)};
    for (const Weighted& one : all) {
        result.value += one.weight * one.told.value;
    }
    return result;
}

/// A figure of the group over the curves that the data do not tell apart.
Interval95 overCurves(const GroupGrowth& growth, const std::function<Interval95(const GroupGrowth&)>& told) {
    std::vector<Weighted> all{{growth.weight, told(growth)}};
    for (const GroupGrowth& other : growth.others) {
        all.push_back({other.weight, told(other)});
    }
    return over(all);
}

/// An animal on one curve, under one spread of bends or (nullptr) none.
struct OnCurve {
    const GroupGrowth& growth;
    const OwnBends* bends;
    std::size_t animal;
    double weight;
};

/// Everything that tells an animal: the weights sum to 1.
std::vector<OnCurve> tellersOf(const GroupGrowth& growth, std::size_t animal) {
    std::vector<OnCurve> all;
    const auto add = [&](const GroupGrowth& one) {
        const bool own = one.bends && one.bends->of[animal].told;
        all.push_back({one, own ? &*one.bends : nullptr, animal, one.weight});
    };
    add(growth);
    std::for_each(growth.others.begin(), growth.others.end(), add);
    return all;
}

/// A figure made of two lengths and its derivatives by them.
struct Figure {
    double value = 0.0;
    double byLater = 0.0;
    double byEarlier = 0.0;
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

/// What is asked of an animal: a figure made of its lengths at two ages (or one), with the derivatives by the fitted
/// values there, that of the earlier one negative.
struct Asked {
    double laterDays = 0.0;
    double earlierDays = 0.0;
    std::function<Figure(double later, double earlier)> of;  ///< of lengths in mm
    bool measured = false;                                   ///< as a further session shows it
};

/// The figure at two fitted values and its derivatives by those.
Figure figureAt(const GroupGrowth& growth, const Asked& asked, double later, double earlier) {
    const double laterMm = growth.lengthOf(later);
    const double earlierMm = growth.lengthOf(earlier);
    Figure figure = asked.of(laterMm, earlierMm);
    figure.byLater *= lengthByScale(growth.scale, laterMm);
    figure.byEarlier *= lengthByScale(growth.scale, earlierMm);
    return figure;
}

double errorVarianceOf(const GroupGrowth& growth, const Asked& asked, double fitted) {
    return asked.measured ? growth.errorVarianceAt(fitted) : 0.0;
}

/// A figure with the width of an estimate of what it changes with (delta method).
Interval95 widthOf(double value, const MixedEstimate& width) {
    return {value, value + width.lower95 - width.value, value + width.upper95 - width.value};
}

/// The figure of an own bent curve. (Its ends along the direction in which it changes most, in place of the delta
/// method, covered 88 % of forecasts where this covers 94 %.)
Interval95 toldByOwn(const OnCurve& on, const Asked& asked) {
    const GroupGrowth& growth = on.growth;
    const OwnBends::Curve& own = on.bends->of[on.animal];
    const double later = growth.fittedBy(own, asked.laterDays);
    const Figure figure = figureAt(growth, asked, later, growth.fittedBy(own, asked.earlierDays));
    std::array<double, 3> x = growth.bendAt(own, asked.laterDays);
    const std::array<double, 3> earlier = growth.bendAt(own, asked.earlierDays);
    for (std::size_t i = 0; i < x.size(); ++i) {
        x[i] = figure.byLater * x[i] + figure.byEarlier * earlier[i];
    }
    const double error = figure.byLater * figure.byLater * errorVarianceOf(growth, asked, later);
    return widthOf(figure.value, predictBend(*on.bends, on.animal, x, error));
}

/// The figure of an animal's line in the mixed model, by the delta method.
Interval95 toldByModel(const OnCurve& on, const Asked& asked) {
    const GroupGrowth& growth = on.growth;
    const MixedFit& fit = growth.fitOf(on.animal);
    MixedPoint x = growth.pointAt(asked.laterDays);
    const MixedPoint earlier = growth.pointAt(asked.earlierDays);
    const double later = predictGroup(fit, on.animal, x, 0.0).value;
    const Figure figure = figureAt(growth, asked, later, predictGroup(fit, on.animal, earlier, 0.0).value);
    x.intercept = figure.byLater * x.intercept + figure.byEarlier * earlier.intercept;
    x.slope = figure.byLater * x.slope + figure.byEarlier * earlier.slope;
    for (std::size_t i = 0; i < x.x.size(); ++i) {
        x.x[i] = figure.byLater * x.x[i] + figure.byEarlier * earlier.x[i];
    }
    const double error = figure.byLater * figure.byLater * errorVarianceOf(growth, asked, later);
    return widthOf(figure.value, leaning(growth, predictGroup(fit, on.animal, x, error)));
}

Interval95 toldBy(const OnCurve& on, const Asked& asked) {
    return on.bends != nullptr ? toldByOwn(on, asked) : toldByModel(on, asked);
}

Asked lengthAt(double ageDays, bool measured) {
    return {ageDays, ageDays, [](double later, double) { return Figure{later, 1.0, 0.0}; }, measured};
}

Asked rateBetween(double fromDays, double toDays) {
    const double days = toDays - fromDays;
    return {toDays, fromDays, [days](double later, double earlier) {
                return Figure{(later - earlier) / days, 1.0 / days, -1.0 / days};
            }};
}

Asked sgrBetween(double fromDays, double toDays) {
    const double percent = 100.0 / (toDays - fromDays);
    return {toDays, fromDays, [percent](double later, double earlier) {
                return Figure{percent * std::log(later / earlier), percent / later, -percent / earlier};
            }};
}

/// A figure of an animal over all that tells it.
std::optional<Interval95> told(const GroupGrowth& growth, std::int64_t animal, const Asked& asked) {
    const auto index = growth.indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    std::vector<Weighted> all;
    for (const OnCurve& one : tellersOf(growth, *index)) {
        all.push_back({one.weight, toldBy(one, asked)});
    }
    return over(all);
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

std::array<double, 3> GroupGrowth::bendAt(const OwnBends::Curve& own, double ageDays) const {
    if (curve == AgeCurve::Saturating) {
        const auto [at, byRate] = saturated({perDay, centre, spread}, ageDays - youngestDays, own.logRate);
        return {1.0, at, own.at[1] * byRate};
    }
    const MixedPoint point = pointAt(ageDays);
    return {1.0, point.x[1], point.x.size() > 2 ? point.x[2] : point.x[1] * point.x[1]};
}

double GroupGrowth::fittedBy(const OwnBends::Curve& own, double ageDays) const {
    const std::array<double, 3> x = bendAt(own, ageDays);
    return own.at[0] * x[0] + own.at[1] * x[1] + own.at[2] * x[2];
}

double GroupGrowth::lengthOf(double fitted) const {
    return lengthFrom(scale, fitted);
}

double GroupGrowth::errorVarianceAt(double fitted) const {
    const double lengthMm = lengthOf(fitted);
    const double byScale = lengthByScale(scale, lengthMm);
    return errorVariance * std::pow(lengthMm, errorPower) / (byScale * byScale);
}

Interval95 GroupGrowth::meanAt(double ageDays) const {
    return overCurves(*this,
                      [&](const GroupGrowth& one) { return inMm(one, predictMean(one.fit, one.pointAt(ageDays))); });
}

Interval95 GroupGrowth::newAnimalAt(double ageDays) const {
    return overCurves(*this, [&](const GroupGrowth& one) {
        const MixedPoint point = one.pointAt(ageDays);
        return inMm(one, predictNewGroup(one.fit, point, one.errorVarianceAt(predictMean(one.fit, point).value)));
    });
}

std::optional<Interval95> GroupGrowth::animalAt(std::int64_t animal, double ageDays) const {
    return told(*this, animal, lengthAt(ageDays, false));
}

std::optional<Interval95> GroupGrowth::measuredAt(std::int64_t animal, double ageDays) const {
    return told(*this, animal, lengthAt(ageDays, true));
}

std::optional<Interval95> GroupGrowth::rateMmPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    return told(*this, animal, rateBetween(fromDays, toDays));
}

std::optional<Interval95> GroupGrowth::sgrPercentPerDay(std::int64_t animal, double fromDays, double toDays) const {
    assert(toDays > fromDays);
    const auto index = indexOf(animal);
    if (!index) {
        return std::nullopt;
    }
    const auto positive = [&](const OnCurve& one) {
        return toldBy(one, lengthAt(fromDays, false)).value > 0.0 && toldBy(one, lengthAt(toDays, false)).value > 0.0;
    };
    const std::vector<OnCurve> tellers = tellersOf(*this, *index);
    if (!std::all_of(tellers.begin(), tellers.end(), positive)) {
        return std::nullopt;
    }
    return told(*this, animal, sgrBetween(fromDays, toDays));
}

}  // namespace ringrule
