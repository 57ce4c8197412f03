// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/rate.h"

#include <cassert>
#include <cmath>
#include <vector>

namespace ringrule {

namespace {

double daysBetween(const Observation& earlier, const Observation& later) {
    return static_cast<double>((later.on - earlier.on).count());
}

}  // namespace

double lengthWeight(const Estimate& lengthMm) {
    constexpr double kPosture = 0.003;
    const double sd = std::hypot(lengthMm.sd(), kPosture * lengthMm.value);
    return 1.0 / (sd * sd);
}

bool GrowthRate::real() const {
    return std::abs(gainMm.value) > smallestRealGainMm;
}

Outcome<GrowthRate> growthRate(const Observation& earlier, const Observation& later, SharedPart shared) {
    if (!earlier.standardLengthMm.known() || !later.standardLengthMm.known()) {
        return Refusal{"no-length", "One of the two sessions has no standard length; photograph the animal again."};
    }
    GrowthRate rate;
    rate.days = daysBetween(earlier, later);
    if (!(rate.days > 0.0)) {
        return Refusal{"no-time", "The two observations are not in order of time; a rate needs days between them."};
    }
    rate.gainMm = difference(later.standardLengthMm, earlier.standardLengthMm, shared);
    rate.mmPerDay = scaled(rate.gainMm, 1.0 / rate.days);
    const Estimate logGain = difference(logarithm(later.standardLengthMm), logarithm(earlier.standardLengthMm), shared);
    rate.lengthSgrPercentPerDay = scaled(logGain, 100.0 / rate.days);
    rate.smallestRealGainMm = rate.gainMm.u95();
    return rate;
}

double specificGrowthPercentPerDay(double sizeBefore, double sizeAfter, double days) {
    assert(sizeBefore > 0.0 && sizeAfter > 0.0 && days > 0.0);
    return 100.0 * (std::log(sizeAfter) - std::log(sizeBefore)) / days;
}

Outcome<Estimate> rateOver(std::span<const Observation> observations) {
    std::vector<const Observation*> known;
    for (const Observation& one : observations) {
        if (one.standardLengthMm.known()) {
            known.push_back(&one);
        }
    }
    if (known.size() < 3) {
        return Refusal{"too-few-points", "A rate over time needs three sessions with a length."};
    }
    double weightSum = 0.0;
    double meanDays = 0.0;
    std::vector<double> weights;
    for (const Observation* one : known) {
        const double sd = one->standardLengthMm.sd();
        weights.push_back(sd > 0.0 ? 1.0 / (sd * sd) : 1.0);
        weightSum += weights.back();
        meanDays += weights.back() * daysBetween(*known.front(), *one);
    }
    meanDays /= weightSum;
    double squares = 0.0;
    for (std::size_t i = 0; i < known.size(); ++i) {
        squares += weights[i] * std::pow(daysBetween(*known.front(), *known[i]) - meanDays, 2);
    }
    if (!(squares > 0.0)) {
        return Refusal{"no-time", "All observations are of one day; a rate needs days between them."};
    }
    Estimate total{0.0, 0.0, 0.0};
    for (std::size_t i = 0; i < known.size(); ++i) {
        const double part = weights[i] * (daysBetween(*known.front(), *known[i]) - meanDays) / squares;
        total = sum(total, scaled(known[i]->standardLengthMm, part), SharedPart::Separate);
    }
    return total;
}

}  // namespace ringrule
