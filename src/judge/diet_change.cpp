// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "judge/case_file.h"
#include "judge/condition.h"
#include "judge/lag_evidence.h"
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

/// The first and the last session of a side that have a length.
struct Span {
    const Observation* first = nullptr;
    const Observation* last = nullptr;

    [[nodiscard]] bool known() const { return first != nullptr && first != last; }
    [[nodiscard]] Estimate mmPerDay() const {
        if (!known()) {
            return {};
        }
        const auto rate = growthRate(*first, *last);
        return rate ? rate.value().mmPerDay : Estimate{};
    }
};

Span spanOf(const std::vector<const Observation*>& side) {
    Span span;
    for (const Observation* seen : side) {
        if (seen->standardLengthMm.known()) {
            span.first = span.first == nullptr ? seen : span.first;
            span.last = seen;
        }
    }
    return span;
}

/// The intervals between sessions that lie in a span, at least one.
double intervalsOf(const CaseFile& file, const Span& span) {
    const auto inside = std::count_if(file.sound.begin(), file.sound.end(), [&](const Observation* seen) {
        return seen->on > span.first->on && seen->on <= span.last->on;
    });
    return std::max<double>(1.0, static_cast<double>(inside));
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

/// The rates on both sides. That after a change starts with the last session before it, or one session after it would
/// tell nothing; the days before the change in that interval make an improvement look smaller, never larger.
struct SideSpans {
    Span before;
    Span after;
};

SideSpans spansOf(const Sides& sides) {
    std::vector<const Observation*> after = sides.after;
    if (after.size() == 1 && !sides.before.empty()) {
        after.insert(after.begin(), sides.before.back());
    }
    return {spanOf(sides.before), spanOf(after)};
}

/// What the animal grew after the change beyond what its tankmates' growth lets expect, by the ratio of the two before.
Estimate beyondTankmates(const Casebook& book, std::size_t of, const SideSpans& spans) {
    const LaggingOptions& limits = book.options().lagging;
    const GainComparison before = compareGain(book, of, *spans.before.first, *spans.before.last);
    const GainComparison after = compareGain(book, of, *spans.after.first, *spans.after.last);
    const auto enough = [&](const GainComparison& gain) {
        return gain.mates.size() >= static_cast<std::size_t>(book.options().group.fewFrom) && gain.tankmates > 0.0 &&
               gain.comparable;
    };
    if (!enough(before) || !enough(after)) {
        return {};
    }
    const double unit = 1.0 + std::pow(wobbleOfMiddle(std::min(before.mates.size(), after.mates.size())), 2);
    const double intervals =
        1.0 / intervalsOf(book.file(of), spans.before) + 1.0 / intervalsOf(book.file(of), spans.after);
    const double usual = std::pow(limits.growthSpread, 2) + std::pow(limits.monthlySpread, 2);
    const double wider = std::max(widerThanUsual(before, usual, book.options().group),
                                  widerThanUsual(after, usual, book.options().group));
    double variance = unit * std::pow(wider * limits.monthlySpread, 2) * intervals;
    for (const GainComparison* gain : {&before, &after}) {
        variance += (std::pow(gain->own.sdRandom, 2) + std::pow(gain->mateErrorSd, 2)) / std::pow(gain->tankmates, 2);
    }
    if (spans.before.last == spans.after.first) {
        variance += 2.0 * unit * std::pow(logLengthSd(*spans.after.first, book.options().doubt), 2) /
                    (before.tankmates * after.tankmates);
    }
    const double days = static_cast<double>((spans.after.last->on - spans.after.first->on).count());
    const double start = spans.after.first->standardLengthMm.value;
    const double expected = start * std::exp(before.own.value / before.tankmates * after.tankmates);
    const double reached = start * std::exp(after.own.value);
    return {(reached - expected) / days, 0.5 * (reached + expected) * after.tankmates / days * std::sqrt(variance),
            0.0};
}

BeforeAfter rates(const Casebook& book, std::size_t of, const std::vector<std::size_t>& mates, const Sides& sides,
                  const Spells& spells) {
    const SideSpans spans = spansOf(sides);
    BeforeAfter result;
    result.before = spans.before.mmPerDay();
    result.after = spans.after.mmPerDay();
    result.change = difference(result.after, result.before, SharedPart::Separate);
    std::vector<double> others;
    for (std::size_t i : mates) {
        const SideSpans theirs = spansOf(sidesOf(book.file(i), spells, book.options()));
        const Estimate before = theirs.before.mmPerDay();
        const Estimate after = theirs.after.mmPerDay();
        if (i != of && before.known() && after.known()) {
            others.push_back(after.value - before.value);
        }
    }
    if (others.size() >= 2) {
        const RobustSpread spread = robustSpread(others);
        result.tankmatesChange = {spread.centre, wobbleOfMiddle(others.size()) * spread.spread, 0.0};
    }
    if (result.change.known()) {
        // Growth of one animal varies from interval to interval, whatever it eats.
        const double varies =
            book.options().lagging.monthlySpread *
            std::sqrt(1.0 / intervalsOf(book.file(of), spans.before) + 1.0 / intervalsOf(book.file(of), spans.after));
        result.change.sdRandom = std::hypot(result.change.sdRandom, varies * std::abs(result.before.value));
        result.beyondTankmates = beyondTankmates(book, of, spans);
    }
    const Estimate& told = result.beyondTankmates.known() ? result.beyondTankmates : result.change;
    result.verdict = verdictOf(told, kMatteringPart * std::abs(result.before.value));
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
    if (series.mates.size() >= 2) {
        result.tankmatesChange = {0.0, 0.0, 0.0};
        result.beyondTankmates = result.change;
    }
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
            return what + " is no better beyond error " + sizes;
        case AfterChange::TooEarly:
            break;
    }
    return "it is too early to tell of its " + what;
}

/// "; 0.12 mm/day (0.05 to 0.19) more than its tankmates' growth lets expect", or that nothing can be set against it.
std::string controlText(const BeforeAfter& rate) {
    if (!rate.beyondTankmates.known()) {
        return rate.change.known() ? ", with no tankmates' growth to set it against" : "";
    }
    Estimate size = rate.beyondTankmates;
    const bool more = size.value >= 0.0;
    size.value = std::abs(size.value);
    std::string text = ", " + rateText(size) + (more ? " more" : " less") + " than its tankmates' growth lets expect";
    if (rate.verdict == AfterChange::Improved && rate.tankmatesChange.known()) {
        text += rate.tankmatesChange.value > rate.tankmatesChange.u95() ? ", as its tankmates' did"
                                                                        : ", while its tankmates' did not";
    }
    return text;
}

std::string describe(const DietChange& change) {
    const BeforeAfter& rate = change.rateMmPerDay;
    const BeforeAfter& shape = change.conditionPercent;
    std::string text = change.animalCode + ", food changed on " + formatDate(change.changedOn) + ": ";
    text += verdictText(rate, "growth", "(" + rateText(rate.before) + " before, " + rateText(rate.after) + " after)");
    text += (rate.verdict == AfterChange::TooEarly ? std::string() : controlText(rate)) + "; ";
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
    const Casebook book(animals, on, options);
    const Sides sides = sidesOf(book.file(of), spells, options);
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
    const auto mates = book.tankmates(of, last);
    change.rateMmPerDay = rates(book, of, mates, sides, spells);
    const ConditionSeries series = conditionSeries(book, of, last, ConditionMeasure::Depth);
    change.conditionPercent = condition(series, sides);
    change.sentence = describe(change);
    return change;
}

}  // namespace ringrule
