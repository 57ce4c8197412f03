// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/gain_comparison.h"

#include <algorithm>
#include <cmath>

#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr double kMedianSd = 1.2533;
constexpr double kZ95 = 1.959963984540054;

/// The animal's value against the median of the others', `least` being the least spread between healthy animals.
GainComparison against(const Estimate& own, const std::vector<Estimate>& others, double least) {
    std::vector<double> values;
    double squares = 0.0;
    for (const Estimate& one : others) {
        values.push_back(one.value);
        squares += one.sdRandom * one.sdRandom;
    }
    GainComparison result;
    result.own = own;
    result.tankmates = median(values);
    result.lag = own.value - result.tankmates;
    const auto n = static_cast<double>(values.size());
    // What the tankmates differ by holds their own error already; what is believed at least does not.
    const double error = std::sqrt(squares / n);
    const double spread = std::max(medianAbsoluteDeviation(values), std::hypot(least, error));
    const double ofMedian = kMedianSd * spread / std::sqrt(n);
    result.errorSd = std::hypot(own.sdRandom, ofMedian);
    result.sd = std::hypot(own.sdRandom, ofMedian, std::sqrt(std::max(spread * spread - error * error, least * least)));
    return result;
}

double leastSpread(std::size_t mates, const JudgeOptions& options) {
    return mates >= static_cast<std::size_t>(options.group.robustFrom) ? options.lagging.leastSpread
                                                                       : options.lagging.spreadOfFew;
}

}  // namespace

GainComparison compareGain(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
                           const Observation& from, const Observation& to, const JudgeOptions& options) {
    const Estimate own = logGain(files[of], from.on, to.on, options);
    std::vector<Estimate> others;
    std::vector<std::size_t> mates;
    for (std::size_t i : tankmatesOf(animals, of, to.on, options.group)) {
        const Estimate gain = logGain(files[i], from.on, to.on, options);
        if (gain.known() && !settlingToFood(animals[i], to.on, options.group)) {
            others.push_back(gain);
            mates.push_back(i);
        }
    }
    if (!own.known() || mates.size() < static_cast<std::size_t>(options.group.fewFrom)) {
        return {};
    }
    std::vector<double> values;
    values.reserve(others.size());
    for (const Estimate& one : others) {
        values.push_back(one.value);
    }
    GainComparison result = against(own, others, leastSpread(mates.size(), options) * std::max(0.0, median(values)));
    result.mates = std::move(mates);
    result.comparable = result.tankmates > options.lagging.growthOverError * kZ95 * own.sdRandom;
    return result;
}

GainComparison compareLength(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
                             const Observation& at, const JudgeOptions& options) {
    std::vector<Estimate> others;
    std::vector<std::size_t> mates;
    for (std::size_t i : tankmatesOf(animals, of, at.on, options.group)) {
        const Observation* seen = inSession(files[i], at.on, options.group);
        if (seen != nullptr && seen->standardLengthMm.known()) {
            others.push_back({std::log(seen->standardLengthMm.value), logLengthSd(*seen, options.doubt), 0.0});
            mates.push_back(i);
        }
    }
    if (!at.standardLengthMm.known() || mates.size() < static_cast<std::size_t>(options.group.fewFrom)) {
        return {};
    }
    const Estimate own{std::log(at.standardLengthMm.value), logLengthSd(at, options.doubt), 0.0};
    GainComparison result = against(own, others, leastSpread(mates.size(), options));
    result.mates = std::move(mates);
    result.comparable = true;
    return result;
}

}  // namespace ringrule
