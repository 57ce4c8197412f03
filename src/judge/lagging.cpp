// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/lagging.h"

#include <algorithm>
#include <cmath>

#include "judge/gain_comparison.h"
#include "ringrule/growth/fit.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/tankmates.h"

namespace ringrule {

namespace {

constexpr double kZ95 = 1.959963984540054;

/// Sessions with a length, far enough apart to give rates, the last being that of `on`; sessions in the first week
/// after a change of food give none.
std::vector<const Observation*> rateSessions(const AnimalHistory& animal, const CaseFile& file, Date on,
                                             const JudgeOptions& options) {
    std::vector<const Observation*> sessions;
    const std::vector<const Observation*> latestFirst(file.sound.rbegin(), file.sound.rend());
    for (const Observation* seen : latestFirst) {
        const bool usable =
            seen->on <= on && seen->standardLengthMm.known() && !settlingToFood(animal, seen->on, options.group);
        if (usable &&
            (sessions.empty() || sessions.back()->on - seen->on >= std::chrono::days(options.lagging.leastDays))) {
            sessions.push_back(seen);
        }
    }
    std::reverse(sessions.begin(), sessions.end());
    return sessions;
}

Estimate percentOfGain(const GainComparison& gain) {
    const double scale = 100.0 / gain.tankmates;
    return {scale * gain.lag, scale * gain.errorSd, 0.0};
}

bool behind95(const GainComparison& gain) {
    return gain.comparable && gain.sds() < -kZ95;
}

/// The comparisons that a verdict rests on: the last interval, the one before, and both together.
struct Window {
    GainComparison last;
    GainComparison before;
    GainComparison both;
};

Window windowAt(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
                const std::vector<const Observation*>& sessions, std::size_t at, const JudgeOptions& options) {
    Window window;
    window.last = compareGain(animals, files, of, *sessions[at - 1], *sessions[at], options);
    if (at > 1) {
        window.before = compareGain(animals, files, of, *sessions[at - 2], *sessions[at - 1], options);
        window.both = compareGain(animals, files, of, *sessions[at - 2], *sessions[at], options);
    }
    return window;
}

bool twoAgree(const Window& window, const LaggingOptions& options) {
    return behind95(window.last) && behind95(window.before) && window.both.comparable &&
           window.both.sds() < -options.lagSds;
}

bool oneIsEnough(const Window& window, const Observation& to, const LaggingOptions& options) {
    return window.last.comparable && to.sidePhotos >= options.singlePhotos &&
           window.last.sds() < -options.singleLagSds && window.last.part() < -options.singleLagPart;
}

/// Fills in what is told of the rate over the window.
void describeRate(LaggingVerdict& verdict, const GainComparison& gain, const Observation& from, const Observation& to) {
    const auto rate = growthRate(from, to);
    if (rate) {
        verdict.ownMmPerDay = rate.value().mmPerDay;
        verdict.windowDays = rate.value().days;
    }
    verdict.mates = gain.mates;
    verdict.lagPercent = percentOfGain(gain);
    const auto days = static_cast<double>((to.on - from.on).count());
    const double expected = from.standardLengthMm.value * (std::exp(gain.tankmates) - 1.0) / days;
    const double errorOfMedian = std::sqrt(std::max(0.0, std::pow(gain.errorSd, 2) - std::pow(gain.own.sdRandom, 2)));
    verdict.expectedMmPerDay = {expected, to.standardLengthMm.value * errorOfMedian / days, 0.0};
}

/// Walks back to the first session of the run of intervals that lag by more than their 95 % interval.
Date lagSince(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
              const std::vector<const Observation*>& sessions, const JudgeOptions& options) {
    std::size_t at = sessions.size() - 1;
    while (at > 1 && behind95(compareGain(animals, files, of, *sessions[at - 2], *sessions[at - 1], options))) {
        --at;
    }
    return sessions[at]->on;
}

/// The curve of the animal's own sessions up to one of them, by days since its first.
Outcome<GrowthChoice> ownCurve(const std::vector<const Observation*>& sessions, std::size_t upTo) {
    std::vector<GrowthPoint> points;
    for (std::size_t i = 0; i <= upTo; ++i) {
        points.push_back({static_cast<double>((sessions[i]->on - sessions.front()->on).count()),
                          sessions[i]->standardLengthMm.value, 1.0});
    }
    return chooseGrowth(points);
}

/// Whether the curve of its sessions before the window says that the animal has nearly reached its asymptote. The
/// window itself says nothing: an animal that stops early looks as if it had.
bool grownUp(const std::vector<const Observation*>& sessions, std::size_t windowStart, const LaggingOptions& limits) {
    const auto choice = ownCurve(sessions, windowStart);
    return choice.ok() &&
           sessions.back()->standardLengthMm.value > limits.grownUpPart * choice.value().best().asymptoteMm();
}

/// The rate expected from the animal's own sessions before the window, by the curve that suits them best; levelling-off
/// curves among them say when little is to be expected. Not known when they do not tell.
Estimate rateFromPast(const std::vector<const Observation*>& sessions, std::size_t windowStart) {
    const auto choice = ownCurve(sessions, windowStart);
    if (!choice) {
        return {};
    }
    const GrowthFit& fit = choice.value().best();
    const auto from = static_cast<double>((sessions[windowStart]->on - sessions.front()->on).count());
    const auto to = static_cast<double>((sessions.back()->on - sessions.front()->on).count());
    const double sd = std::hypot(fit.meanAt(to).sdRandom, fit.residualSdMm) / (to - from);
    return {(fit.lengthAtDays(to) - fit.lengthAtDays(from)) / (to - from), sd, 0.0};
}

/// Two intervals without a gain beyond the error, where one was expected.
void judgeStalled(LaggingVerdict& verdict, const std::vector<const Observation*>& sessions, const Window& window,
                  const JudgeOptions& options) {
    const LaggingOptions& limits = options.lagging;
    const std::size_t last = sessions.size() - 1;
    if (last < 2) {
        return;
    }
    const auto rate = growthRate(*sessions[last - 2], *sessions[last]);
    if (!rate || rate.value().gainMm.value > rate.value().smallestRealGainMm) {
        return;
    }
    Estimate expected;
    if (window.both.comparable) {
        LaggingVerdict described;
        describeRate(described, window.both, *sessions[last - 2], *sessions[last]);
        expected = described.expectedMmPerDay;
    } else if (window.both.mates.empty()) {
        expected = rateFromPast(sessions, last - 2);
        verdict.expectedFromPast = true;
    }
    const bool wasExpected = expected.known() && (expected.value - expected.u95()) * rate.value().days >
                                                     limits.growthOverError * rate.value().smallestRealGainMm;
    if (!wasExpected || rate.value().mmPerDay.value > limits.stalledPart * expected.value ||
        grownUp(sessions, last - 2, limits)) {
        verdict.expectedFromPast = false;
        return;
    }
    verdict.stalled = true;
    verdict.ownMmPerDay = rate.value().mmPerDay;
    verdict.expectedMmPerDay = expected;
    verdict.windowDays = rate.value().days;
    verdict.mates = window.both.mates;
    verdict.since = sessions[last - 1]->on;
}

/// Length itself far below the tankmates' in two sessions, for an animal that grows in step.
void judgeSmall(LaggingVerdict& verdict, std::span<const AnimalHistory> animals, std::span<const CaseFile> files,
                std::size_t of, const std::vector<const Observation*>& sessions, const JudgeOptions& options) {
    if (sessions.size() < 2) {
        return;
    }
    const GainComparison now = compareLength(animals, files, of, *sessions.back(), options);
    const GainComparison before = compareLength(animals, files, of, *sessions[sessions.size() - 2], options);
    const bool enough = now.mates.size() >= static_cast<std::size_t>(options.group.robustFrom) && before.comparable;
    if (now.comparable) {
        verdict.lengthPercent = {100.0 * (std::exp(now.lag) - 1.0), 100.0 * now.errorSd, 0.0};
    }
    if (!enough || now.sds() > -kZ95 || before.sds() > -kZ95 ||
        0.5 * (now.sds() + before.sds()) > -options.lagging.lengthSds) {
        return;
    }
    verdict.small = true;
    verdict.mates = now.mates;
    std::size_t at = sessions.size() - 1;
    while (at > 0) {
        const GainComparison earlier = compareLength(animals, files, of, *sessions[at - 1], options);
        if (!earlier.comparable || earlier.sds() > -kZ95) {
            break;
        }
        --at;
    }
    verdict.since = sessions[at]->on;
}

}  // namespace

LaggingVerdict judgeLagging(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
                            Date on, const JudgeOptions& options) {
    LaggingVerdict verdict;
    const auto sessions = rateSessions(animals[of], files[of], on, options);
    if (sessions.size() < 2 || sessions.back()->on != on) {
        return verdict;
    }
    const std::size_t last = sessions.size() - 1;
    const Window window = windowAt(animals, files, of, sessions, last, options);
    verdict.judged = !window.last.mates.empty() || last >= 2;
    if (twoAgree(window, options.lagging)) {
        verdict.behind = true;
        describeRate(verdict, window.both, *sessions[last - 2], *sessions[last]);
    } else if (oneIsEnough(window, *sessions[last], options.lagging)) {
        verdict.behind = true;
        verdict.oneIntervalOnly = true;
        describeRate(verdict, window.last, *sessions[last - 1], *sessions[last]);
    }
    if (verdict.behind) {
        verdict.since = lagSince(animals, files, of, sessions, options);
    }
    judgeStalled(verdict, sessions, window, options);
    if (!verdict.behind && !verdict.stalled) {
        judgeSmall(verdict, animals, files, of, sessions, options);
    }
    verdict.few = !verdict.mates.empty() && verdict.mates.size() < static_cast<std::size_t>(options.group.robustFrom);
    return verdict;
}

std::optional<Estimate> jumpedAhead(std::span<const AnimalHistory> animals, std::span<const CaseFile> files,
                                    std::size_t of, Date on, const JudgeOptions& options) {
    std::vector<const Observation*> known;
    for (const Observation* seen : files[of].sound) {
        if (seen->on <= on && seen->standardLengthMm.known()) {
            known.push_back(seen);
        }
    }
    if (known.size() < 2 || known.back()->on != on) {
        return std::nullopt;
    }
    const GainComparison gain = compareGain(animals, files, of, *known[known.size() - 2], *known.back(), options);
    if (gain.mates.empty() || gain.lag < options.doubt.jumpPart || gain.sds() < options.doubt.jumpSds) {
        return std::nullopt;
    }
    return Estimate{gain.lag, gain.errorSd, 0.0};
}

}  // namespace ringrule
