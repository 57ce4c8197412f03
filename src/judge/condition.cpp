// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/condition.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

#include "judge/gain_comparison.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// A session in which only one of several tankmates was seen tells of that one, not of the group.
constexpr std::size_t kTwo = 2;

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

/// The tankmates' residuals in one session, and the middle ones of them and of their lengths.
struct SessionOfMates {
    std::size_t count = 0;
    double middle = 0.0;
    double middleLogLength = 0.0;
};

/// The tankmates' points with the line through them; each session is looked up once.
class MatesBySession {
public:
    MatesBySession(const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line,
                   const GroupOptions& options)
        : mates_(mates), line_(line), tolerance_(options.sameSessionDays) {}

    [[nodiscard]] const SessionOfMates& on(Date day) {
        const auto [found, isNew] = sessions_.try_emplace(day);
        if (isNew) {
            found->second = lookUp(day);
        }
        return found->second;
    }

private:
    [[nodiscard]] const ShapePoint* nearest(const std::vector<ShapePoint>& points, Date day) const {
        const ShapePoint* nearest = nullptr;
        const auto first = std::lower_bound(points.begin(), points.end(), day - tolerance_,
                                            [](const ShapePoint& point, Date on) { return point.seen->on < on; });
        for (auto point = first; point != points.end() && point->seen->on <= day + tolerance_; ++point) {
            if (nearest == nullptr ||
                std::chrono::abs(point->seen->on - day) < std::chrono::abs(nearest->seen->on - day)) {
                nearest = &*point;
            }
        }
        return nearest;
    }

    [[nodiscard]] SessionOfMates lookUp(Date day) const {
        std::vector<double> residuals;
        std::vector<double> logLengths;
        for (const auto& points : mates_) {
            if (const ShapePoint* point = nearest(points, day)) {
                residuals.push_back(line_.residual(*point));
                logLengths.push_back(point->logLength);
            }
        }
        return residuals.empty() ? SessionOfMates{}
                                 : SessionOfMates{residuals.size(), median(residuals), median(logLengths)};
    }

    const std::vector<std::vector<ShapePoint>>& mates_;
    const Allometry& line_;
    std::chrono::days tolerance_;
    std::map<Date, SessionOfMates> sessions_;
};

/// How far the tankmates themselves differ: from each other for good, and each from session to session.
struct Spreads {
    double between = 0.0;
    double within = 0.0;
};

Spreads spreadsOf(const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line, MatesBySession& sessions) {
    std::vector<double> usual;
    std::vector<double> changes;
    for (const auto& points : mates) {
        std::vector<double> gaps;
        for (const ShapePoint& point : points) {
            gaps.push_back(line.residual(point) - sessions.on(point.seen->on).middle);
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

/// The animal's own points set against each session's tankmates, or, without any, against its own line.
std::vector<ConditionPoint> gapsOf(const std::vector<ShapePoint>& own,
                                   const std::vector<std::vector<ShapePoint>>& mates, const Allometry& line,
                                   const Spreads& spreads, MatesBySession& sessions) {
    std::vector<ConditionPoint> points;
    for (const ShapePoint& point : own) {
        ConditionPoint result;
        result.seen = point.seen;
        result.ownSd = point.sd;
        result.lengthCarried = point.lengthCarried;
        result.own = line.residual(point);
        if (mates.empty()) {
            result.gap = line.residual(point);
            result.sd = std::hypot(point.sd, line.slopeSd * (point.logLength - own.back().logLength));
            points.push_back(result);
            continue;
        }
        const SessionOfMates& session = sessions.on(point.seen->on);
        if (session.count < std::min(mates.size(), kTwo)) {
            continue;
        }
        result.mates = session.count;
        result.gap = result.own - session.middle;
        const double ofMiddle = wobbleOfMiddle(result.mates) * std::hypot(spreads.between, spreads.within);
        result.sd = std::hypot(point.sd, ofMiddle, line.slopeSd * std::abs(point.logLength - session.middleLogLength));
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

Reference referenceFor(const Casebook& book, std::size_t of, Date on, ConditionMeasure measure, double logLength) {
    const JudgeOptions& options = book.options();
    Reference reference;
    for (std::size_t i : book.tankmates(of, on)) {
        if (!likeSex(book.animal(of), book.animal(i), on, options.group)) {
            continue;
        }
        auto points = shapePoints(book.animal(i), book.file(i), on, measure, false, options);
        keepLikeShape(points, logLength, options.group);
        if (!points.empty()) {
            reference.points.push_back(std::move(points));
            reference.who.push_back(i);
        }
    }
    return reference;
}

/// The line that residuals are told from: the tankmates'. With one tankmate, that of both before the two sessions under
/// judgement, as either may have changed since; without any, the animal's own.
Allometry lineFor(const std::vector<ShapePoint>& own, const std::vector<std::vector<ShapePoint>>& mates,
                  const ThinnessOptions& options) {
    if (mates.size() >= kTwo) {
        return allometryOf(mates, false, options);
    }
    if (mates.empty() || own.size() <= 2 * kTwo) {
        return allometryOf({own}, true, options);
    }
    const Date end = own[own.size() - kTwo].seen->on;
    std::vector<std::vector<ShapePoint>> past{own, mates.front()};
    for (auto& points : past) {
        std::erase_if(points, [end](const ShapePoint& point) { return point.seen->on >= end; });
    }
    return allometryOf(past, past.front().size() + past.back().size() == 0, options);
}

}  // namespace

ConditionSeries conditionSeries(const Casebook& book, std::size_t of, Date on, ConditionMeasure measure) {
    const JudgeOptions& options = book.options();
    ConditionSeries series;
    std::vector<ShapePoint> own = shapePoints(book.animal(of), book.file(of), on, measure, true, options);
    if (own.empty()) {
        return series;
    }
    keepLikeShape(own, own.back().logLength, options.group);
    const Reference reference = referenceFor(book, of, on, measure, own.back().logLength);
    const auto& mates = reference.points;
    const Allometry line = lineFor(own, mates, options.thinness);
    MatesBySession sessions(mates, line, options.group);
    Spreads spreads = spreadsOf(mates, line, sessions);
    const bool told = mates.size() >= static_cast<std::size_t>(options.group.robustFrom);
    spreads.between = told ? std::max(spreads.between, options.thinness.leastSpread) : options.thinness.spreadOfFew;
    series.mates = reference.who;
    series.points = gapsOf(own, mates, line, spreads, sessions);
    series.between = spreads.between;
    // The tankmates' spread holds the wobble of their median already; the least variation allowed for does not.
    const double middleWobble = mates.empty() ? 1.0 : std::hypot(1.0, wobbleOfMiddle(mates.size()));
    const double photos = std::sqrt(meanSquare(series.points));
    const double variation = told ? options.thinness.sessionVariation : options.thinness.sessionVariationOfFew;
    series.within = std::max(spreads.within, middleWobble * std::hypot(photos, variation));
    return series;
}

}  // namespace ringrule
