// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/lagging.h"

#include <algorithm>
#include <cmath>

#include "judge/lag_evidence.h"
#include "ringrule/growth/fit.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/tankmates.h"

namespace ringrule {

namespace {

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

/// Two sessions or more agree: the loudest window tells a lag from a healthy animal's, it had begun to show a session
/// ago, and the animal is truly behind its tankmates, whatever its past, by a part that matters.
bool sessionsAgree(const LagEvidence& loudest, const JudgeOptions& options) {
    const LaggingOptions& limits = options.lagging;
    const auto mates = loudest.gain.mates.size();
    const double sds = mates < static_cast<std::size_t>(options.group.robustFrom) ? limits.lagSdsOfFew : limits.lagSds;
    return loudest.sds < -sds && loudest.sdsBefore < -limits.lagSdsBefore && loudest.gain.part() < -limits.leastLag &&
           loudest.gain.lag < -kZ95 * loudest.gain.own.sdRandom;
}

/// One interval alone, on photos that agree and a large gap; never on one tankmate.
bool oneIsEnough(const LagEvidence& last, const Observation& to, const JudgeOptions& options) {
    const LaggingOptions& limits = options.lagging;
    return last.gain.mates.size() >= static_cast<std::size_t>(options.group.fewFrom) &&
           to.sidePhotos >= limits.singlePhotos && last.sds < -limits.singleLagSds &&
           last.gain.part() < -limits.singleLagPart;
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

/// The first session at which the lag showed: the window's second, or earlier ones whose intervals lag as clearly.
Date lagSince(const Casebook& book, std::size_t of, const std::vector<const Observation*>& sessions,
              std::size_t start) {
    std::size_t at = start + 1;
    while (at > 1) {
        const auto earlier = lagEvidence(book, of, sessions, at - 2, at - 1);
        if (!earlier || earlier->sds > -kZ95 || earlier->gain.part() > -book.options().lagging.leastLag) {
            break;
        }
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
void judgeStalled(LaggingVerdict& verdict, const Casebook& book, std::size_t of,
                  const std::vector<const Observation*>& sessions) {
    const LaggingOptions& limits = book.options().lagging;
    const std::size_t last = sessions.size() - 1;
    if (last < 2) {
        return;
    }
    const auto rate = growthRate(*sessions[last - 2], *sessions[last]);
    if (!rate || rate.value().gainMm.value > rate.value().smallestRealGainMm) {
        return;
    }
    Estimate expected;
    const GainComparison both = compareGain(book, of, *sessions[last - 2], *sessions[last]);
    const bool some = both.mates.size() >= static_cast<std::size_t>(book.options().group.fewFrom);
    if (both.comparable && some) {
        LaggingVerdict described;
        describeRate(described, both, *sessions[last - 2], *sessions[last]);
        expected = described.expectedMmPerDay;
    } else if (!some) {
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
    verdict.mates = verdict.expectedFromPast ? std::vector<std::size_t>{} : both.mates;
    verdict.since = sessions[last - 1]->on;
}

/// Length itself far below the tankmates' in two sessions, for an animal that grows in step.
void judgeSmall(LaggingVerdict& verdict, const Casebook& book, std::size_t of,
                const std::vector<const Observation*>& sessions) {
    const JudgeOptions& options = book.options();
    if (sessions.size() < 2) {
        return;
    }
    const GainComparison now = compareLength(book, of, *sessions.back());
    const GainComparison before = compareLength(book, of, *sessions[sessions.size() - 2]);
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
        const GainComparison earlier = compareLength(book, of, *sessions[at - 1]);
        if (!earlier.comparable || earlier.sds() > -kZ95) {
            break;
        }
        --at;
    }
    verdict.since = sessions[at]->on;
}

}  // namespace

LaggingVerdict judgeLagging(const Casebook& book, std::size_t of, Date on) {
    const JudgeOptions& options = book.options();
    LaggingVerdict verdict;
    const auto sessions = rateSessions(book.animal(of), book.file(of), on, options);
    if (sessions.size() < 2 || sessions.back()->on != on) {
        return verdict;
    }
    const std::size_t last = sessions.size() - 1;
    const auto lastInterval = lagEvidence(book, of, sessions, last - 1, last);
    const auto loudest = loudestLag(book, of, sessions);
    verdict.judged = lastInterval || loudest || last >= 2 || book.tankmates(of, on).size() > 1;
    // Who keeps up again is no longer behind, whatever was before.
    const bool keepsUp = lastInterval && lastInterval->gain.lag >= 0.0;
    if (loudest && !keepsUp && sessionsAgree(*loudest, options)) {
        verdict.behind = true;
        describeRate(verdict, loudest->gain, *sessions[loudest->start], *sessions[last]);
        verdict.since = lagSince(book, of, sessions, loudest->start);
    } else if (lastInterval && oneIsEnough(*lastInterval, *sessions[last], options)) {
        verdict.behind = true;
        verdict.oneIntervalOnly = true;
        describeRate(verdict, lastInterval->gain, *sessions[last - 1], *sessions[last]);
        verdict.since = lagSince(book, of, sessions, last - 1);
    }
    judgeStalled(verdict, book, of, sessions);
    if (!verdict.behind && !verdict.stalled) {
        judgeSmall(verdict, book, of, sessions);
    }
    verdict.few = !verdict.mates.empty() && verdict.mates.size() < static_cast<std::size_t>(options.group.robustFrom);
    return verdict;
}

std::optional<Estimate> jumpedAhead(const Casebook& book, std::size_t of, Date on) {
    const JudgeOptions& options = book.options();
    std::vector<const Observation*> known;
    for (const Observation* seen : book.file(of).sound) {
        if (seen->on <= on && seen->standardLengthMm.known()) {
            known.push_back(seen);
        }
    }
    if (known.size() < 2 || known.back()->on != on) {
        return std::nullopt;
    }
    const GainComparison gain = compareGain(book, of, *known[known.size() - 2], *known.back());
    if (gain.mates.size() < static_cast<std::size_t>(options.group.fewFrom) || gain.lag < options.doubt.jumpPart ||
        gain.sds() < options.doubt.jumpSds) {
        return std::nullopt;
    }
    return Estimate{gain.lag, gain.errorSd, 0.0};
}

}  // namespace ringrule
