// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "judge/case_file.h"
#include "judge/condition.h"
#include "judge/words.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/diets.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/propagate.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr std::size_t kSessionsEachSide = 3;

/// A change of this part of the usual value matters; an interval wider than that has shown nothing either way.
constexpr double kMatteringPart = 0.5;              // of the rate before
constexpr double kMatteringConditionPercent = 8.0;  // of depth: what keepers begin to see

struct Spells {
    const DietSpell* before = nullptr;
    const DietSpell* after = nullptr;
};

Spells latestChange(const AnimalHistory& animal, Date on) {
    std::vector<const DietSpell*> spells;
    for (const DietSpell& spell : animal.dietSpells) {
        if (spell.from <= on) {
            spells.push_back(&spell);
        }
    }
    std::sort(spells.begin(), spells.end(), [](const auto* a, const auto* b) { return a->from < b->from; });
    return spells.size() < 2 ? Spells{} : Spells{spells[spells.size() - 2], spells.back()};
}

/// Believed sessions on either side of the change, those nearest to it.
struct Sides {
    std::vector<const Observation*> before;
    std::vector<const Observation*> after;
};

Sides sidesOf(const CaseFile& file, const Spells& spells, const JudgeOptions& options) {
    Sides sides;
    for (const Observation* seen : file.sound) {
        const auto since = seen->on - spells.after->from;
        if (since <= std::chrono::days(0)) {
            if (seen->on >= spells.before->from) {
                sides.before.push_back(seen);
            }
        } else if (since >= std::chrono::days(options.group.settleDays) && sides.after.size() < kSessionsEachSide) {
            sides.after.push_back(seen);
        }
    }
    if (sides.before.size() > kSessionsEachSide) {
        sides.before.erase(sides.before.begin(), sides.before.end() - kSessionsEachSide);
    }
    return sides;
}

/// The rate between the first and last session of a side that have a length.
Estimate rateOfSide(const std::vector<const Observation*>& side) {
    const Observation* first = nullptr;
    const Observation* last = nullptr;
    for (const Observation* seen : side) {
        if (seen->standardLengthMm.known()) {
            first = first == nullptr ? seen : first;
            last = seen;
        }
    }
    if (first == nullptr || first == last) {
        return {};
    }
    const auto rate = growthRate(*first, *last);
    return rate ? rate.value().mmPerDay : Estimate{};
}

AfterChange verdictOf(const Estimate& change, double mattering) {
    if (!change.known()) {
        return AfterChange::TooEarly;
    }
    if (std::abs(change.value) > change.u95()) {
        return change.value > 0.0 ? AfterChange::Improved : AfterChange::Worse;
    }
    return change.u95() < mattering ? AfterChange::NoRealChange : AfterChange::TooEarly;
}

/// The side of rates after a change starts with the last session before it, or one session after it would tell nothing;
/// the days before the change in that interval make an improvement look smaller, never larger.
BeforeAfter rates(std::span<const CaseFile> files, std::size_t of, const std::vector<std::size_t>& mates,
                  const Sides& sides, const Spells& spells, const JudgeOptions& options) {
    const auto sideRates = [](const Sides& s) {
        std::vector<const Observation*> after = s.after;
        if (!after.empty() && after.size() < 2 && !s.before.empty()) {
            after.insert(after.begin(), s.before.back());
        }
        return std::pair(rateOfSide(s.before), rateOfSide(after));
    };
    BeforeAfter result;
    std::tie(result.before, result.after) = sideRates(sides);
    result.change = difference(result.after, result.before, SharedPart::Separate);
    std::vector<double> others;
    for (std::size_t i : mates) {
        if (i == of) {
            continue;
        }
        const auto [before, after] = sideRates(sidesOf(files[i], spells, options));
        if (before.known() && after.known()) {
            others.push_back(after.value - before.value);
        }
    }
    if (others.size() >= 2) {
        const RobustSpread spread = robustSpread(others);
        result.tankmatesChange = {spread.centre, 1.2533 * spread.spread / std::sqrt(static_cast<double>(others.size())),
                                  0.0};
    }
    result.verdict = verdictOf(result.change, kMatteringPart * std::abs(result.before.value));
    return result;
}

/// Mean condition (%) of the points of some sessions.
Estimate meanCondition(const ConditionSeries& series, const std::vector<const Observation*>& side) {
    double total = 0.0;
    double count = 0.0;
    for (const ConditionPoint& point : series.points) {
        if (std::find(side.begin(), side.end(), point.seen) != side.end()) {
            total += 100.0 * (std::exp(point.gap) - 1.0);
            count += 1.0;
        }
    }
    return count > 0.0 ? Estimate{total / count, 100.0 * series.within / std::sqrt(count), 0.0} : Estimate{};
}

/// The last session before the change against the mean after it: the way down before the change is no baseline for what
/// came after, its end is.
BeforeAfter condition(const ConditionSeries& series, const Sides& sides) {
    BeforeAfter result;
    result.before = meanCondition(series, {sides.before.back()});
    result.after = sides.after.empty() ? Estimate{} : meanCondition(series, {sides.after.back()});
    result.change = difference(result.after, result.before, SharedPart::Common);
    // The tankmates are the measuring rod here: their median is zero in every session by construction.
    result.tankmatesChange = series.mates.empty() ? Estimate{} : Estimate{0.0, 0.0, 0.0};
    result.verdict = verdictOf(result.change, kMatteringConditionPercent);
    return result;
}

std::string verdictText(const BeforeAfter& one, const std::string& what, const std::string& sizes) {
    switch (one.verdict) {
        case AfterChange::Improved:
            return what + " improved after the change " + sizes;
        case AfterChange::Worse:
            return what + " fell after the change " + sizes;
        case AfterChange::NoRealChange:
            return what + " did not change beyond error " + sizes;
        case AfterChange::TooEarly:
            break;
    }
    return "it is too early to tell of its " + what;
}

std::string describe(const DietChange& change) {
    const BeforeAfter& rate = change.rateMmPerDay;
    const BeforeAfter& shape = change.conditionPercent;
    std::string text = change.animalCode + ", food changed on " + formatDate(change.changedOn) + ": ";
    text += verdictText(rate, "growth", "(" + rateText(rate.before) + " before, " + rateText(rate.after) + " after)");
    const bool apart = rate.verdict == AfterChange::Improved && rate.tankmatesChange.known();
    if (apart) {
        const bool mates = rate.tankmatesChange.value > rate.tankmatesChange.u95();
        text += mates ? ", as its tankmates' did" : " while its tankmates' did not";
    }
    text += "; ";
    text += verdictText(shape, "condition",
                        "(" + numberText(shape.before.value, 0) + " % before, " + numberText(shape.after.value, 0) +
                            " % after, against its tankmates)");
    text += ".";
    if (rate.verdict == AfterChange::Improved || shape.verdict == AfterChange::Improved) {
        text += " This does not prove the cause: an animal chosen because it was low tends to be less low next time.";
    }
    return text;
}

}  // namespace

Outcome<DietChange> dietChange(std::span<const AnimalHistory> animals, std::size_t of, Date on,
                               const JudgeOptions& options) {
    const Spells spells = latestChange(animals[of], on);
    if (spells.after == nullptr) {
        return Refusal{"no-change-of-food", "No change of food is on record for this animal."};
    }
    const std::vector<CaseFile> files = caseFiles(animals, on, options);
    const Sides sides = sidesOf(files[of], spells, options);
    if (sides.before.size() < 2) {
        return Refusal{"too-few-sessions", "There are fewer than two sessions before the change to compare with."};
    }
    DietChange change;
    change.animal = animals[of].animal.id;
    change.animalCode = animals[of].animal.code;
    change.changedOn = spells.after->from;
    change.from = spells.before->diet;
    change.to = spells.after->diet;
    for (const Observation* seen : sides.before) {
        change.sessionsBefore.push_back(seen->on);
    }
    for (const Observation* seen : sides.after) {
        change.sessionsAfter.push_back(seen->on);
    }
    const Date last = sides.after.empty() ? sides.before.back()->on : sides.after.back()->on;
    const auto mates = tankmatesOf(animals, of, last, options.group);
    change.rateMmPerDay = rates(files, of, mates, sides, spells, options);
    const ConditionSeries series = conditionSeries(animals, files, of, last, ConditionMeasure::Depth, options);
    change.conditionPercent = condition(series, sides);
    change.sentence = describe(change);
    return change;
}

}  // namespace ringrule
