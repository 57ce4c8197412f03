// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/lag_evidence.h"

#include <algorithm>
#include <cmath>

namespace ringrule {

namespace {

/// Intervals before the window that tell of an animal's usual growth: half a year of monthly sessions.
constexpr std::size_t kPastIntervals = 6;

double square(double value) {
    return value * value;
}

/// What an animal's own past says of its gain over its tankmates'.
struct OwnPast {
    double ratio = 1.0;        ///< own over tankmates'; 1 when unknown
    double reliability = 0.0;  ///< of that ratio as a sign of the animal itself
    double errorAtEnd = 0.0;   ///< ln error of the session where the window starts, over the past gain
    double variance = 0.0;     ///< measuring error of `ratio`
    bool known = false;
};

/// `unit`: variance of the difference between one animal and the tankmates' middle, in units of one animal's.
OwnPast pastOf(const Casebook& book, std::size_t of, const std::vector<const Observation*>& sessions, std::size_t start,
               double unit) {
    OwnPast past;
    if (start == 0) {
        return past;
    }
    const std::size_t first = start > kPastIntervals ? start - kPastIntervals : 0;
    const GainComparison gain = compareGain(book, of, *sessions[first], *sessions[start]);
    if (!gain.comparable) {
        return past;
    }
    const LaggingOptions& limits = book.options().lagging;
    past.known = true;
    past.ratio = gain.own.value / gain.tankmates;
    past.variance = (square(gain.own.sdRandom) + square(gain.mateErrorSd)) / square(gain.tankmates);
    const double forGood = unit * square(limits.growthSpread);
    const double passing = unit * square(limits.monthlySpread) / static_cast<double>(start - first);
    past.reliability = forGood / (forGood + passing + past.variance);
    past.errorAtEnd = logLengthSd(*sessions[start], book.options().doubt) / gain.tankmates;
    return past;
}

}  // namespace

std::optional<LagEvidence> lagEvidence(const Casebook& book, std::size_t of,
                                       const std::vector<const Observation*>& sessions, std::size_t start,
                                       std::size_t end) {
    const LaggingOptions& limits = book.options().lagging;
    LagEvidence evidence;
    evidence.start = start;
    evidence.intervals = end - start;
    evidence.gain = compareGain(book, of, *sessions[start], *sessions[end]);
    const GainComparison& gain = evidence.gain;
    if (!gain.comparable) {
        return std::nullopt;
    }
    const double unit = 1.0 + square(wobbleOfMiddle(gain.mates.size()));
    const OwnPast past = pastOf(book, of, sessions, start, unit);
    // With one tankmate nobody is the measure of the other: only a change against the own past can be told.
    const bool alone = gain.mates.size() < static_cast<std::size_t>(book.options().group.fewFrom);
    if (alone && !past.known) {
        return std::nullopt;
    }
    const double passing = square(limits.monthlySpread) / static_cast<double>(evidence.intervals);
    const double wider = widerThanUsual(gain, square(limits.growthSpread) + passing, book.options().group);
    // A slow past excuses one spread of slowness, no more.
    evidence.expected = std::max(1.0 + past.reliability * (past.ratio - 1.0), 1.0 - wider * limits.growthSpread);
    if (alone) {
        evidence.expected = std::min(evidence.expected, past.ratio);
    }
    const double spread = square(wider) * unit * (square(limits.growthSpread) * (1.0 - past.reliability) + passing);
    const double errorAtStart = logLengthSd(*sessions[start], book.options().doubt) / gain.tankmates;
    const double error = (square(gain.own.sdRandom) + square(gain.mateErrorSd)) / square(gain.tankmates) +
                         square(past.reliability) * past.variance +
                         2.0 * past.reliability * errorAtStart * past.errorAtEnd;
    evidence.sds = (gain.own.value / gain.tankmates - evidence.expected) / std::sqrt(spread + error);
    return evidence;
}

double widerThanUsual(const GainComparison& gain, double usualVariance, const GroupOptions& group) {
    constexpr double kPriorAnimals = 4.0;
    const auto n = static_cast<double>(gain.mates.size());
    if (gain.mates.size() < static_cast<std::size_t>(group.robustFrom)) {
        return 1.0;
    }
    const double seen = std::max(0.0, square(gain.matesSpread) - square(gain.matesOwnErrorSd)) / square(gain.tankmates);
    const double pooled = (kPriorAnimals * usualVariance + n * seen) / (kPriorAnimals + n);
    return std::sqrt(std::max(1.0, pooled / usualVariance));
}

std::optional<LagEvidence> loudestLag(const Casebook& book, std::size_t of,
                                      const std::vector<const Observation*>& sessions) {
    const auto longest = static_cast<std::size_t>(book.options().lagging.longestWindow);
    const std::size_t end = sessions.size() - 1;
    std::optional<LagEvidence> loudest;
    for (std::size_t intervals = 2; intervals <= std::min(longest, end); ++intervals) {
        auto evidence = lagEvidence(book, of, sessions, end - intervals, end);
        if (!evidence || (loudest && evidence->sds >= loudest->sds)) {
            continue;
        }
        const auto before = lagEvidence(book, of, sessions, end - intervals, end - 1);
        evidence->sdsBefore = before ? before->sds : 0.0;
        loudest = std::move(evidence);
    }
    return loudest;
}

}  // namespace ringrule
