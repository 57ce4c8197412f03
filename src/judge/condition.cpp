// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/condition.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr double kMedianSd = 1.2533;  // sd of a median of n normal values, times √n / σ

const Estimate& measured(const Observation& seen, ConditionMeasure measure) {
    return measure == ConditionMeasure::Depth ? seen.trunkDepthMm : seen.trunkWidthMm;
}

/// A fair observation as a point of the allometric plot.
struct ShapePoint {
    const Observation* seen = nullptr;
    double logLength = 0.0;
    double logSize = 0.0;
    double sd = 0.0;
    bool lengthCarried = false;
};

/// Fair points of one animal up to a day. `carryLength`: where a length is missing, the last known one stands in: as
/// fish do not shrink, the expected depth is then too small, and thinness at worst hidden.
std::vector<ShapePoint> shapePoints(const AnimalHistory& animal, const CaseFile& file, Date on,
                                    ConditionMeasure measure, bool carryLength, const JudgeOptions& options) {
    std::vector<ShapePoint> points;
    const Observation* lastLength = nullptr;
    for (const Observation* seen : file.sound) {
        if (seen->on > on) {
            break;
        }
        const bool known = seen->standardLengthMm.known();
        lastLength = known ? seen : lastLength;
        if (!measured(*seen, measure).known() || !girthFair(animal, *seen, options.group) || lastLength == nullptr ||
            (!known && !carryLength)) {
            continue;
        }
        const Estimate size = logarithm(measured(*seen, measure));
        const Estimate length = logarithm(lastLength->standardLengthMm);
        const Estimate shape = difference(size, length, known ? SharedPart::Common : SharedPart::Separate);
        // The scale's error cancels in the ratio; what is left of it is still common to the tankmates of the session.
        points.push_back({seen, length.value, size.value, known ? shape.sdRandom : shape.sd(), !known});
    }
    return points;
}

/// Young and grown shapes are not compared.
void keepLikeShape(std::vector<ShapePoint>& points, double logLength, const GroupOptions& options) {
    const double change = std::log(options.shapeChangesAtMm);
    std::erase_if(points, [&](const ShapePoint& point) { return (point.logLength < change) != (logLength < change); });
}

struct Allometry {
    double slope = 1.0;
    double slopeSd = 0.0;
    double intercept = 0.0;

    [[nodiscard]] double residual(const ShapePoint& point) const {
        return point.logSize - intercept - slope * point.logLength;
    }
};

/// The line through all points; `ofOneAnimal`: its slope is not fitted, as growing and thinning would be one.
Allometry allometryOf(const std::vector<std::vector<ShapePoint>>& mates, bool ofOneAnimal,
                      const ThinnessOptions& options) {
    std::vector<double> x;
    std::vector<double> y;
    for (const auto& points : mates) {
        for (const ShapePoint& point : points) {
            x.push_back(point.logLength);
            y.push_back(point.logSize);
        }
    }
    Allometry line;
    line.slopeSd = options.slopeSdUntold;
    const auto [low, high] = std::minmax_element(x.begin(), x.end());
    if (!ofOneAnimal && x.size() >= 6 && *high - *low >= std::log(options.slopeToldByRatio)) {
        const LineFit fit = huberLine(x, y);
        return {fit.slope, fit.slopeSd, fit.intercept};
    }
    std::vector<double> offsets;
    for (std::size_t i = 0; i < x.size(); ++i) {
        offsets.push_back(y[i] - x[i]);
    }
    line.intercept = median(offsets);
    return line;
}

/// The tankmates' residuals and lengths in one session.
struct SessionOfMates {
    std::vector<double> residuals;
    std::vector<double> logLengths;
    std::vector<std::size_t> who;
};

SessionOfMates sessionOf(const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line, Date on,
                         const GroupOptions& options) {
    SessionOfMates session;
    for (std::size_t i = 0; i < mates.size(); ++i) {
        const ShapePoint* nearest = nullptr;
        for (const ShapePoint& point : mates[i]) {
            const auto apart = std::chrono::abs(point.seen->on - on);
            if (apart <= std::chrono::days(options.sameSessionDays) &&
                (nearest == nullptr || apart < std::chrono::abs(nearest->seen->on - on))) {
                nearest = &point;
            }
        }
        if (nearest != nullptr) {
            session.residuals.push_back(line.residual(*nearest));
            session.logLengths.push_back(nearest->logLength);
            session.who.push_back(i);
        }
    }
    return session;
}

/// How far the tankmates themselves differ: from each other for good, and each from session to session.
struct Spreads {
    double between = 0.0;
    double within = 0.0;
};

Spreads spreadsOf(const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line,
                  const GroupOptions& options) {
    std::vector<double> usual;
    std::vector<double> changes;
    for (std::size_t i = 0; i < mates.size(); ++i) {
        std::vector<double> gaps;
        for (const ShapePoint& point : mates[i]) {
            const SessionOfMates session = sessionOf(mates, line, point.seen->on, options);
            gaps.push_back(line.residual(point) - median(session.residuals));
        }
        if (gaps.empty()) {
            continue;
        }
        const double centre = median(gaps);
        usual.push_back(centre);
        const auto n = static_cast<double>(gaps.size());
        for (double gap : gaps) {
            if (gaps.size() > 1) {
                changes.push_back(std::abs(gap - centre) * std::sqrt(n / (n - 1.0)));
            }
        }
    }
    Spreads spreads;
    if (usual.size() > 1) {
        spreads.between = medianAbsoluteDeviation(usual);
    }
    if (!changes.empty()) {
        spreads.within = 1.4826 * median(changes);
    }
    return spreads;
}

double slopeError(const Allometry& line, double logLength, const std::vector<double>& others) {
    return others.empty() ? 0.0 : line.slopeSd * std::abs(logLength - median(others));
}

/// The animal's own points set against each session's tankmates, or, without any, against its own line.
std::vector<ConditionPoint> gapsOf(const std::vector<ShapePoint>& own,
                                   const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line,
                                   const Spreads& spreads, const JudgeOptions& options) {
    std::vector<ConditionPoint> points;
    for (const ShapePoint& point : own) {
        ConditionPoint result;
        result.seen = point.seen;
        result.ownSd = point.sd;
        result.lengthCarried = point.lengthCarried;
        if (mates.empty()) {
            result.gap = line.residual(point);
            result.sd = std::hypot(point.sd, line.slopeSd * (point.logLength - own.back().logLength));
            points.push_back(result);
            continue;
        }
        const SessionOfMates session = sessionOf(mates, line, point.seen->on, options.group);
        if (session.residuals.size() < static_cast<std::size_t>(options.group.fewFrom)) {
            continue;
        }
        result.mates = session.residuals.size();
        result.gap = line.residual(point) - median(session.residuals);
        const double ofMedian =
            kMedianSd * std::hypot(spreads.between, spreads.within) / std::sqrt(static_cast<double>(result.mates));
        result.sd = std::hypot(point.sd, ofMedian, slopeError(line, point.logLength, session.logLengths));
        points.push_back(result);
    }
    return points;
}

double meanSquare(const std::vector<ConditionPoint>& points) {
    double total = 0.0;
    for (const ConditionPoint& point : points) {
        total += point.ownSd * point.ownSd;
    }
    return points.empty() ? 0.0 : total / static_cast<double>(points.size());
}

/// The tankmates that an animal may be compared with on a day, and their fair points up to then.
struct Reference {
    std::vector<std::vector<ShapePoint>> points;
    std::vector<std::size_t> who;
};

Reference referenceFor(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of, Date on,
                       ConditionMeasure measure, double logLength, const JudgeOptions& options) {
    Reference reference;
    for (std::size_t i : tankmatesOf(animals, of, on, options.group)) {
        if (!likeSex(animals[of], animals[i], on, options.group)) {
            continue;
        }
        auto points = shapePoints(animals[i], files[i], on, measure, false, options);
        keepLikeShape(points, logLength, options.group);
        if (!points.empty()) {
            reference.points.push_back(std::move(points));
            reference.who.push_back(i);
        }
    }
    // One tankmate's own ups and downs cannot be told from the animal's.
    return reference.who.size() < static_cast<std::size_t>(options.group.fewFrom) ? Reference{} : reference;
}

}  // namespace

ConditionSeries conditionSeries(std::span<const AnimalHistory> animals, std::span<const CaseFile> files, std::size_t of,
                                Date on, ConditionMeasure measure, const JudgeOptions& options) {
    ConditionSeries series;
    std::vector<ShapePoint> own = shapePoints(animals[of], files[of], on, measure, true, options);
    if (own.empty()) {
        return series;
    }
    keepLikeShape(own, own.back().logLength, options.group);
    const Reference reference = referenceFor(animals, files, of, on, measure, own.back().logLength, options);
    const auto& mates = reference.points;
    const Allometry line =
        allometryOf(mates.empty() ? std::vector<std::vector<ShapePoint>>{own} : mates, mates.empty(), options.thinness);
    Spreads spreads = spreadsOf(mates, line, options.group);
    const bool told = mates.size() >= static_cast<std::size_t>(options.group.robustFrom);
    spreads.between = told ? std::max(spreads.between, options.thinness.leastSpread) : options.thinness.spreadOfFew;
    series.mates = reference.who;
    series.points = gapsOf(own, mates, line, spreads, options);
    series.between = spreads.between;
    // The tankmates' spread holds the wobble of their median already; the least variation allowed for does not.
    const double medianWobble =
        mates.empty() ? 1.0 : std::hypot(1.0, kMedianSd / std::sqrt(static_cast<double>(mates.size())));
    const double photos = std::sqrt(meanSquare(series.points));
    series.within = std::max(spreads.within, medianWobble * std::hypot(photos, options.thinness.sessionVariation));
    return series;
}

}  // namespace ringrule
