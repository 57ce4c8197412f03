// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/gain_comparison.h"

#include <algorithm>
#include <cmath>

#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr double kMedianSd = 1.2533;
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
    const double wobble = wobbleOfMiddle(values.size());
    result.matesSpread = values.size() > 1 ? medianAbsoluteDeviation(values) : 0.0;
    result.matesOwnErrorSd = error;
    const double spread = std::max(result.matesSpread, std::hypot(least, error));
    result.mateErrorSd = wobble * error;
    result.errorSd = std::hypot(own.sdRandom, wobble * spread);
    result.sd =
        std::hypot(own.sdRandom, wobble * spread, std::sqrt(std::max(spread * spread - error * error, least * least)));
    return result;
}

double leastSpread(std::size_t mates, const JudgeOptions& options) {
    return mates >= static_cast<std::size_t>(options.group.robustFrom) ? options.lagging.leastSpread
                                                                       : options.lagging.spreadOfFew;
}

}  // namespace

double wobbleOfMiddle(std::size_t count) {
    return (count > 2 ? kMedianSd : 1.0) / std::sqrt(static_cast<double>(count));
}

GainComparison compareGain(const Casebook& book, std::size_t of, const Observation& from, const Observation& to) {
    const JudgeOptions& options = book.options();
    const Estimate own = logGain(book.file(of), from.on, to.on, options);
    std::vector<Estimate> others;
    std::vector<double> values;
    std::vector<std::size_t> mates;
    for (std::size_t i : book.tankmates(of, to.on)) {
        const Estimate gain = logGain(book.file(i), from.on, to.on, options);
        if (gain.known() && !settlingToFood(book.animal(i), to.on, options.group)) {
            others.push_back(gain);
            values.push_back(gain.value);
            mates.push_back(i);
        }
    }
    if (!own.known() || mates.empty()) {
        return {};
    }
    GainComparison result = against(own, others, leastSpread(mates.size(), options) * std::max(0.0, median(values)));
    result.mates = std::move(mates);
    result.comparable = result.tankmates > options.lagging.growthOverError * kZ95 * own.sdRandom;
    return result;
}

GainComparison compareLength(const Casebook& book, std::size_t of, const Observation& at) {
    const JudgeOptions& options = book.options();
    std::vector<Estimate> others;
    std::vector<std::size_t> mates;
    for (std::size_t i : book.tankmates(of, at.on)) {
        const Observation* seen = inSession(book.file(i), at.on, options.group);
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
