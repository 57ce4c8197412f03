// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/tank_level.h"

#include <algorithm>
#include <cmath>

#include "judge/case_file.h"
#include "judge/words.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr std::size_t kLeastInTank = 3;
constexpr std::size_t kLeastSessions = 4;  // two that make a past, two that agree

/// A fair observation of an animal of the tank.
struct TankPoint {
    std::size_t animal = 0;
    Date on;
    double logLength = 0.0;
    double logDepth = 0.0;
    double sdRandom = 0.0;
    double sdShared = 0.0;
};

std::vector<TankPoint> pointsOf(const Casebook& book, TankId tank, Date on) {
    const GroupOptions& options = book.options().group;
    std::vector<TankPoint> points;
    for (std::size_t i = 0; i < book.size(); ++i) {
        const auto& stays = book.animal(i).stays;
        if (std::none_of(stays.begin(), stays.end(), [tank](const Stay& stay) { return stay.tank == tank; })) {
            continue;
        }
        for (const Observation* seen : book.file(i).sound) {
            const bool here = seen->on <= on && tankOn(book.animal(i), seen->on) == tank;
            const Estimate shape =
                difference(logarithm(seen->trunkDepthMm), logarithm(seen->standardLengthMm), SharedPart::Common);
            if (here && shape.known() && girthFair(book.animal(i), *seen, options)) {
                points.push_back({i, seen->on, std::log(seen->standardLengthMm.value),
                                  std::log(seen->trunkDepthMm.value), shape.sdRandom, shape.sdShared});
            }
        }
    }
    return points;
}

/// Days of sessions in order; days close together are one.
std::vector<Date> sessionsOf(const std::vector<TankPoint>& points, const GroupOptions& options) {
    std::vector<Date> days;
    days.reserve(points.size());
    for (const TankPoint& point : points) {
        days.push_back(point.on);
    }
    std::sort(days.begin(), days.end());
    std::vector<Date> sessions;
    for (Date day : days) {
        if (sessions.empty() || day - sessions.back() > std::chrono::days(options.sameSessionDays)) {
            sessions.push_back(day);
        }
    }
    return sessions;
}

/// Slope of ln depth on ln length within animals, from the sessions before the two judged; 1 when too alike to tell.
struct Slope {
    double value = 1.0;
    double sd = 0.0;
};

Slope slopeBefore(const std::vector<TankPoint>& points, Date end, const ThinnessOptions& options) {
    std::vector<double> x;
    std::vector<double> y;
    for (const TankPoint& point : points) {
        if (point.on < end) {
            x.push_back(point.logLength);
            y.push_back(point.logDepth);
        }
    }
    const auto [low, high] = std::minmax_element(x.begin(), x.end());
    if (x.size() < 6 || *high - *low < std::log(options.slopeToldByRatio)) {
        return {1.0, options.slopeSdUntold};
    }
    const LineFit line = huberLine(x, y);
    return {line.slope, line.slopeSd};
}

/// The median change over animals in one session against each one's own past, with its error.
struct SessionChange {
    Estimate logChange;
    std::vector<std::size_t> who;
};

SessionChange changeIn(const std::vector<TankPoint>& points, Date session, Date pastEnd, const Slope& slope,
                       const JudgeOptions& options) {
    std::vector<double> changes;
    std::vector<double> stretches;
    double shared = 0.0;
    SessionChange result;
    for (const TankPoint& now : points) {
        const auto apart = std::chrono::abs(now.on - session);
        std::vector<double> past;
        std::vector<double> lengths;
        for (const TankPoint& point : points) {
            if (point.animal == now.animal && point.on < pastEnd) {
                past.push_back(point.logDepth - slope.value * point.logLength);
                lengths.push_back(point.logLength);
            }
        }
        if (apart > std::chrono::days(options.group.sameSessionDays) || past.size() < 2) {
            continue;
        }
        changes.push_back(now.logDepth - slope.value * now.logLength - median(past));
        stretches.push_back(now.logLength - median(lengths));
        shared = std::max(shared, now.sdShared);
        result.who.push_back(now.animal);
    }
    if (changes.size() >= kLeastInTank) {
        const RobustSpread spread = robustSpread(changes);
        const double ofMedian = 1.2533 * std::max(spread.spread, options.thinness.sessionVariation) /
                                std::sqrt(static_cast<double>(changes.size()));
        const double ofSlope = slope.sd * std::abs(median(stretches));
        // A whole session may be off: by its set-up, and by the usual variation where all were fed alike.
        const double ofSession =
            std::hypot(std::sqrt(1.5) * shared, std::sqrt(1.5) * options.thinness.sessionVariation);
        result.logChange = {spread.centre, std::hypot(ofMedian, ofSlope), ofSession};
    }
    return result;
}

Estimate percent(const Estimate& logChange) {
    const double ratio = std::exp(logChange.value);
    return {100.0 * (ratio - 1.0), 100.0 * ratio * logChange.sdRandom, 100.0 * ratio * logChange.sdShared};
}

}  // namespace

Outcome<TankLevel> tankLevel(std::span<const AnimalHistory> animals, TankId tank, Date on,
                             const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    const std::vector<TankPoint> points = pointsOf(book, tank, on);
    const std::vector<Date> sessions = sessionsOf(points, options.group);
    if (sessions.size() < kLeastSessions) {
        return Refusal{"too-few-sessions", "A tank's own past needs four sessions."};
    }
    const Date last = sessions.back();
    const Date before = sessions[sessions.size() - 2];
    const Slope slope = slopeBefore(points, before, options.thinness);
    const SessionChange now = changeIn(points, last, before, slope, options);
    const SessionChange earlier = changeIn(points, before, before, slope, options);
    if (!now.logChange.known() || !earlier.logChange.known()) {
        return Refusal{"too-few-animals", "Fewer than three animals of this tank have a past to compare with."};
    }
    TankLevel level;
    level.tank = tank;
    level.on = last;
    for (std::size_t i : now.who) {
        level.codes.push_back(animals[i].animal.code);
    }
    level.conditionChangePercent = percent(now.logChange);
    const auto fell = [](const Estimate& change) { return change.value < -change.u95(); };
    level.low = fell(now.logChange) && fell(earlier.logChange);
    if (level.low) {
        level.since = before;
    }
    const std::string who = std::to_string(level.codes.size()) + " animals (" + listText(level.codes) + ")";
    level.sentence = level.low
                         ? "The whole tank is " + sizeWithInterval(level.conditionChangePercent) +
                               " thinner for its lengths than in its own earlier sessions: the middle one of " + who +
                               ", in this session and the one before."
                         : "The tank as a whole is not thinner than in its own earlier sessions beyond error: " +
                               numberText(level.conditionChangePercent.value, 1) + " % (" +
                               numberText(level.conditionChangePercent.value - level.conditionChangePercent.u95(), 1) +
                               " to " +
                               numberText(level.conditionChangePercent.value + level.conditionChangePercent.u95(), 1) +
                               " %), the middle one of " + who + ".";
    return level;
}

Finding tankFinding(const TankLevel& level, const std::string& tankCode) {
    Finding finding;
    finding.kind = FindingKind::TankLow;
    finding.tank = level.tank;
    finding.animalCode = "tank " + tankCode;
    finding.on = level.on;
    finding.since = level.since;
    finding.measure = "condition index of the tank, against its own past";
    finding.unit = "%";
    finding.by = level.conditionChangePercent;
    finding.sentence = level.sentence;
    finding.otherReasons = {"another box, scale or light in the last two sessions",
                            "broods or eggs that passed meanwhile", "colder or staler water, a treatment, a move",
                            "growth that changes shape, where young ones grow up together"};
    finding.nextStep =
        "Check the box and photograph a few of them again; look at food, its enrichment and how much each gets, and at "
        "temperature and salinity. If it stays, or any is listless, call the veterinarian.";
    return finding;
}

}  // namespace ringrule
