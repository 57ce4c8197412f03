// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/forecast.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <set>

#include "ringrule/statistics/distributions.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// With six ages AICc all but forbids a curve of three parameters, and a straight line told growth that slows down too
/// long: its interval covered 84 % a month ahead in simulation; with eight ages 95 %.
constexpr std::size_t kAgesForOwnCurve = 8;
constexpr double kLeastWeight = 0.01;
constexpr int kSteps = 100;

std::size_t agesSeen(std::span<const GrowthPoint> points) {
    std::set<double> ages;
    for (const GrowthPoint& point : points) {
        ages.insert(point.ageDays);
    }
    return ages.size();
}

/// The points with the middle one's weight as unit, so that the scatter of a point of weight 1 is a usual session's.
std::vector<GrowthPoint> toMiddleWeight(std::span<const GrowthPoint> points) {
    std::vector<GrowthPoint> result(points.begin(), points.end());
    std::vector<double> weights;
    for (const GrowthPoint& point : points) {
        weights.push_back(point.weight);
    }
    const double middle = median(weights);
    for (GrowthPoint& point : result) {
        point.weight /= middle;
    }
    return result;
}

/// The scatter of the latest sessions in units of a usual one's, and at what length: errors grow with it. Precondition:
/// three points.
GrowthPoint middleOfLast(const std::vector<GrowthPoint>& points) {
    std::vector<double> weights;
    std::vector<double> lengths;
    for (std::size_t i = points.size() - 3; i < points.size(); ++i) {
        weights.push_back(points[i].weight);
        lengths.push_back(points[i].lengthMm);
    }
    return {points.back().ageDays, median(lengths), median(weights)};
}

bool weighedAlike(std::span<const GrowthPoint> points) {
    return std::all_of(points.begin(), points.end(),
                       [&](const GrowthPoint& one) { return one.weight == points.front().weight; });
}

/// Akaike weights of fits in order of AICc, and the fits that carry one worth counting.
struct Weighed {
    std::vector<GrowthFit> fits;
    std::vector<double> weights;
};

Weighed weighed(const GrowthChoice& choice) {
    Weighed result;
    double sum = 0.0;
    for (const GrowthFit& fit : choice.fits) {
        const double weight = std::exp(-0.5 * (fit.aicc - choice.best().aicc));
        if (weight >= kLeastWeight) {
            result.fits.push_back(fit);
            result.weights.push_back(weight);
            sum += weight;
        }
    }
    for (double& weight : result.weights) {
        weight /= sum;
    }
    return result;
}

/// The mean of several curves; the half-width holds each curve's own and its distance from the mean (Burnham &
/// Anderson 2002, eq. 4.9).
Interval95 averaged(const std::vector<GrowthFit>& fits, const std::vector<double>& weights, double ageDays,
                    const std::function<double(const GrowthFit&)>& band) {
    Interval95 result;
    for (std::size_t i = 0; i < fits.size(); ++i) {
        result.value += weights[i] * fits[i].lengthAtDays(ageDays);
    }
    double half = 0.0;
    for (std::size_t i = 0; i < fits.size(); ++i) {
        const double apart =
            studentQuantile(0.975, fits[i].degreesOfFreedom) * (fits[i].lengthAtDays(ageDays) - result.value);
        half += weights[i] * std::hypot(band(fits[i]), apart);
    }
    result.lower = result.value - half;
    result.upper = result.value + half;
    return result;
}

/// The intervals of a curve on even steps of age, for looking where its ends reach a length.
struct Track {
    std::function<Interval95(double)> curveAt;
    double fromDays = 0.0;
    double stepDays = 0.0;
    std::vector<Interval95> at;
};

Track tracked(std::function<Interval95(double)> curveAt, double fromDays, double toDays) {
    Track track{std::move(curveAt), fromDays, (toDays - fromDays) / kSteps, {}};
    for (int i = 0; i <= kSteps; ++i) {
        track.at.push_back(track.curveAt(fromDays + i * track.stepDays));
    }
    return track;
}

/// The first age at which one end of the interval reaches a length, by steps and halving; nothing when it is there from
/// the start or never gets there.
std::optional<double> firstReaching(const Track& track, double Interval95::*end, double length) {
    const auto reached =
        std::find_if(track.at.begin(), track.at.end(), [&](const Interval95& one) { return one.*end >= length; });
    if (reached == track.at.begin() || reached == track.at.end()) {
        return std::nullopt;
    }
    double high = track.fromDays + static_cast<double>(reached - track.at.begin()) * track.stepDays;
    double low = high - track.stepDays;
    for (int halving = 0; halving < 14; ++halving) {  // from hundredths of the time seen to seconds
        const double middle = 0.5 * (low + high);
        (track.curveAt(middle).*end < length ? low : high) = middle;
    }
    return high;
}

std::string whole(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.0f", value);
    return text;
}

std::string inWords(const WhenReached& when) {
    if (when.already && !when.expectedDays) {
        return "This length was passed before the first session.";
    }
    std::string text = when.expectedDays
                           ? (when.already ? "Reached at day " : "Expected at day ") + whole(*when.expectedDays)
                           : std::string("Not expected within the time that can be forecast, but possible");
    text += when.earliestDays ? "; not before day " + whole(*when.earliestDays) : "; perhaps before the first session";
    text += when.latestDays ? " and not after day " + whole(*when.latestDays) + " (95 %)."
                            : "; how late it could be cannot be told yet.";
    return text;
}

}  // namespace

Outcome<GrowthForecast> GrowthForecast::of(std::span<const GrowthPoint> own, const GroupGrowth* group,
                                           std::int64_t animal) {
    if (std::any_of(own.begin(), own.end(), [](const GrowthPoint& one) {
            return !(one.lengthMm > 0.0) || !std::isfinite(one.lengthMm) || !std::isfinite(one.ageDays);
        })) {
        return Refusal{"no-length", "A length is not above zero or has no age; correct or leave out that session."};
    }
    GrowthForecast forecast;
    forecast.animal_ = animal;
    if (agesSeen(own) >= kAgesForOwnCurve) {
        const std::vector<GrowthPoint> points = toMiddleWeight(own);
        forecast.latest_ = middleOfLast(points);
        forecast.scatterGrows_ = !weighedAlike(own);
        if (const auto choice = chooseGrowth(points)) {
            Weighed all = weighed(choice.value());
            forecast.fits_ = std::move(all.fits);
            forecast.fitWeights_ = std::move(all.weights);
            forecast.firstDays_ = choice.value().best().youngestDays;
            forecast.lastDays_ = choice.value().best().oldestDays;
            return forecast;
        }
    }
    if (group == nullptr || std::find(group->animals.begin(), group->animals.end(), animal) == group->animals.end()) {
        return Refusal{"not-identified",
                       "This animal was seen at too few ages for a forecast of its own, and no group tells it; add "
                       "sessions."};
    }
    forecast.group_ = *group;
    forecast.firstDays_ = group->youngestDays;
    forecast.lastDays_ = group->oldestDays;
    return forecast;
}

ForecastBasis GrowthForecast::basis() const {
    return group_ ? ForecastBasis::GroupCurve : ForecastBasis::OwnCurve;
}

double GrowthForecast::horizonDays() const {
    return lastDays_ + 0.5 * (lastDays_ - firstDays_);
}

Interval95 GrowthForecast::curveAt(double ageDays) const {
    return group_
               ? group_->animalAt(animal_, ageDays).value_or(Interval95{})
               : averaged(fits_, fitWeights_, ageDays, [&](const GrowthFit& fit) { return fit.meanBandMm(ageDays); });
}

Interval95 GrowthForecast::measuredAt(double ageDays) const {
    return group_ ? group_->measuredAt(animal_, ageDays).value_or(Interval95{})
                  : averaged(fits_, fitWeights_, ageDays, [&](const GrowthFit& fit) {
                        const double longer = scatterGrows_ ? fit.lengthAtDays(ageDays) / latest_.lengthMm : 1.0;
                        const double scatter = longer * fit.residualSdMm / std::sqrt(latest_.weight);
                        const double sd = std::hypot(fit.meanAt(ageDays).sdRandom, scatter);
                        return studentQuantile(0.975, fit.degreesOfFreedom) * sd;
                    });
}

Outcome<LengthForecast> GrowthForecast::lengthAtDays(double ageDays) const {
    if (ageDays < firstDays_) {
        return Refusal{"before-first", "This day lies before the first session; ask for a later one."};
    }
    if (!(ageDays <= horizonDays())) {
        return Refusal{"too-far-ahead",
                       "This day lies further ahead than half the time seen so far; ask for an earlier one."};
    }
    LengthForecast forecast;
    forecast.basis = basis();
    forecast.ageDays = ageDays;
    forecast.lengthMm = curveAt(ageDays);
    forecast.measuredMm = measuredAt(ageDays);
    forecast.beyondData = ageDays > lastDays_;
    return forecast;
}

Outcome<WhenReached> GrowthForecast::reaching(double lengthMm) const {
    if (!(lengthMm > 0.0)) {
        return Refusal{"no-length", "A length to reach must be above zero."};
    }
    const Track track = tracked([&](double age) { return curveAt(age); }, firstDays_, horizonDays());
    WhenReached when;
    when.basis = basis();
    when.lengthMm = lengthMm;
    when.earliestDays = firstReaching(track, &Interval95::upper, lengthMm);
    when.expectedDays = firstReaching(track, &Interval95::value, lengthMm);
    when.latestDays = firstReaching(track, &Interval95::lower, lengthMm);
    const Interval95& atFirst = track.at.front();
    if (!when.earliestDays && atFirst.upper < lengthMm) {
        return Refusal{"not-reached",
                       "This length is not reached within the time that can be forecast; ask again after more "
                       "sessions."};
    }
    when.already = atFirst.value >= lengthMm || (when.expectedDays && *when.expectedDays <= lastDays_);
    when.sentence = inWords(when);
    return when;
}

}  // namespace ringrule
