// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge/thinness.h"

#include <algorithm>
#include <cmath>

#include "judge/gain_comparison.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// Sessions that make a past: one alone may be odd, as one alone flags nothing.
constexpr std::size_t kLeastPast = 2;

/// The animal's usual condition before the sessions under judgement.
struct Past {
    double usual = 0.0;
    double usualOwn = 0.0;       ///< the same without the tankmates
    double varianceShare = 0.0;  ///< variance of `usual` in units of the within-animal variance; 0 sessions: infinite
    std::size_t sessions = 0;
};

/// Sessions before `end` that are no part of an episode.
Past pastOf(const std::vector<ConditionPoint>& points, std::size_t end, const std::vector<bool>& inEpisode) {
    std::vector<double> gaps;
    std::vector<double> own;
    for (std::size_t i = 0; i < end; ++i) {
        if (!inEpisode[i]) {
            gaps.push_back(points[i].gap);
            own.push_back(points[i].own);
        }
    }
    Past past;
    past.sessions = gaps.size();
    if (!gaps.empty()) {
        past.usualOwn = median(own);
        // Of two that differ one may be odd; the lower of them claims less of a fall.
        past.usual = gaps.size() == 2 ? std::min(gaps[0], gaps[1]) : median(gaps);
        // A median of three or more costs π/2 of a mean's variance.
        past.varianceShare = (gaps.size() > 2 ? 1.5708 : 1.0) / static_cast<double>(gaps.size());
    }
    return past;
}

struct Step {
    bool thin = false;
    bool thinner = false;
    bool oneSessionOnly = false;
    bool pair = false;  ///< the session before is part of it
    Past past;
    double changeSd = 0.0;
};

/// Error of one session's change against the past. The slope's and the tankmates' errors stay alike over sessions and
/// mostly cancel; what lengths differ more by than before is in `sd` beyond the photos' own.
double changeSd(const ConditionSeries& series, const ConditionPoint& point, const Past& past) {
    const double photos = std::hypot(series.within, std::max(0.0, point.ownSd - series.within));
    const double alone = series.mates.empty() ? point.sd : 0.0;
    return std::hypot(photos * std::sqrt(1.0 + past.varianceShare), alone);
}

bool pairChanged(const ConditionSeries& series, std::size_t at, const Past& past, double sds) {
    const ConditionPoint& now = series.points[at];
    const ConditionPoint& before = series.points[at - 1];
    const auto below = [&](const ConditionPoint& p) { return p.gap - past.usual < -kZ95 * changeSd(series, p, past); };
    const double mean = 0.5 * (now.gap + before.gap) - past.usual;
    const double alone = series.mates.empty() ? std::max(now.sd, before.sd) : 0.0;
    const double sd = std::hypot(series.within * std::sqrt(0.5 + past.varianceShare), alone);
    // With one tankmate the gap widens by either's doing: most of it must be the animal's own.
    const double own = 0.5 * (now.own + before.own) - past.usualOwn;
    const bool itsOwn = series.mates.size() != 1 || own < 0.5 * mean;
    return past.sessions >= kLeastPast && below(now) && below(before) && mean < -sds * sd && itsOwn;
}

/// The animal below its tankmates by this many spreads, over the mean of two sessions.
bool pairLow(const ConditionSeries& series, std::size_t at, double sds) {
    const ConditionPoint& now = series.points[at];
    const ConditionPoint& before = series.points[at - 1];
    const double extra = std::max(0.0, now.sd - now.ownSd);
    const double sd = std::hypot(series.between, series.within / std::sqrt(2.0), extra);
    return now.gap < 0.0 && before.gap < 0.0 && 0.5 * (now.gap + before.gap) < -sds * sd;
}

/// Error of the gap to the tankmates as it is told.
double toldSd(const ConditionPoint& point, const ThinnessOptions& options) {
    return std::hypot(point.sd, options.sessionVariation);
}

bool photosAgree(const ConditionPoint& point, const ThinnessOptions& options) {
    const Estimate& depth = point.seen->trunkDepthMm;
    return point.seen->sidePhotos >= options.singlePhotos && depth.sdRandom <= options.photosAgree * depth.value;
}

Step judgeStep(const ConditionSeries& series, std::size_t at, const std::vector<bool>& inEpisode,
               const JudgeOptions& options) {
    const ThinnessOptions& limits = options.thinness;
    const auto robustFrom = static_cast<std::size_t>(options.group.robustFrom);
    const ConditionPoint& now = series.points[at];
    const bool few = series.mates.size() < robustFrom;
    const bool some = series.mates.size() >= static_cast<std::size_t>(options.group.fewFrom);
    const double sds = few ? limits.changeSdsOfFew : limits.changeSds;
    Step step;
    if (at > 0) {
        step.past = pastOf(series.points, at - 1, inEpisode);
        const bool changed = pairChanged(series, at, step.past, sds);
        // A gap that its own interval does not tell from none is not thin now, whatever the session before was.
        const bool told = now.gap < -kZ95 * toldSd(now, limits);
        const bool low = some && told && pairLow(series, at, limits.supportedLevelSds);
        const bool veryLow = some && !few && pairLow(series, at, limits.levelSds);
        step.thin = (changed && low) || veryLow;
        step.thinner = changed && !step.thin;
        step.pair = step.thin || step.thinner;
    }
    if (!step.pair) {
        const Past all = pastOf(series.points, at, inEpisode);
        const double change = now.gap - all.usual;
        const double levelSd = std::hypot(series.between, series.within, std::max(0.0, now.sd - now.ownSd));
        const bool large = all.sessions >= kLeastPast &&
                           change < -limits.singleChangeSds * changeSd(series, now, all) &&
                           now.gap < -limits.singleLevelSds * levelSd;
        step.thin = large && some && photosAgree(now, limits);
        step.oneSessionOnly = step.thin;
        step.past = step.thin || step.past.sessions == 0 ? all : step.past;
    }
    step.changeSd = changeSd(series, now, step.past);
    return step;
}

Estimate percentOf(double logRatio, double sd) {
    return {100.0 * (std::exp(logRatio) - 1.0), 100.0 * std::exp(logRatio) * sd, 0.0};
}

/// Goes through the sessions in order, each judged with the episodes known by then; the last step is the verdict.
ThinnessVerdict walk(const ConditionSeries& series, const JudgeOptions& options) {
    ThinnessVerdict verdict;
    const std::size_t count = series.points.size();
    if (count < 2) {
        return verdict;
    }
    std::vector<bool> inEpisode(count, false);
    Step step;
    for (std::size_t at = 0; at < count; ++at) {
        step = judgeStep(series, at, inEpisode, options);
        inEpisode[at] = step.thin || step.thinner;
        if (step.pair) {
            inEpisode[at - 1] = true;
        }
    }
    const ConditionPoint& last = series.points.back();
    verdict.judged = true;
    verdict.thin = step.thin;
    // Still below its past but on its way back: the episode goes on, and nothing is getting thinner.
    const bool recovering = last.gap - series.points[count - 2].gap > series.within;
    verdict.thinner = step.thinner && !recovering;
    verdict.oneSessionOnly = step.oneSessionOnly;
    verdict.few = series.mates.size() < static_cast<std::size_t>(options.group.robustFrom);
    verdict.mates = series.mates;
    verdict.lengthCarried = last.lengthCarried;
    if (!series.mates.empty()) {
        verdict.gapPercent = percentOf(last.gap, toldSd(last, options.thinness));
    }
    if (step.past.sessions > 0) {
        verdict.changePercent = percentOf(last.gap - step.past.usual, step.changeSd);
    }
    verdict.sinceLastPercent = percentOf(last.gap - series.points[count - 2].gap, series.within * std::sqrt(2.0));
    for (std::size_t i = count; i-- > 0 && inEpisode[i];) {
        verdict.since = series.points[i].seen->on;
    }
    return verdict;
}

int urgency(const ThinnessVerdict& verdict) {
    return verdict.thin ? 3 : (verdict.thinner ? 2 : (verdict.judged ? 1 : 0));
}

}  // namespace

ThinnessVerdict judgeThinness(const Casebook& book, std::size_t of, Date on) {
    ThinnessVerdict loudest;
    for (ConditionMeasure measure : {ConditionMeasure::Depth, ConditionMeasure::Width}) {
        const ConditionSeries series = conditionSeries(book, of, on, measure);
        if (series.points.empty() || series.points.back().seen->on != on) {
            continue;
        }
        ThinnessVerdict verdict = walk(series, book.options());
        verdict.measure = measure;
        if (urgency(verdict) > urgency(loudest)) {
            loudest = std::move(verdict);
        }
    }
    return loudest;
}

}  // namespace ringrule
