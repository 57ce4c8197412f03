// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/tank_growth.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "judge/case_file.h"
#include "judge/gain_comparison.h"
#include "judge/words.h"
#include "ringrule/growth/rate.h"
#include "ringrule/judge/tankmates.h"
#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr std::size_t kLeastInTank = 3;

const GrowthReference* referenceFor(const SpeciesFacts& facts, const Animal& animal, double ageDays) {
    const std::string sex = animal.sex == Sex::Female ? "female" : animal.sex == Sex::Male ? "male" : "";
    const GrowthReference* found = nullptr;
    for (const GrowthReference& one : facts.growth) {
        const bool here = one.fromDays <= ageDays && ageDays <= one.toDays;
        if (here && (one.sex == sex || (one.sex.empty() && found == nullptr))) {
            found = &one;
        }
    }
    return found;
}

/// One animal's growth over one interval against the published.
struct PartGrown {
    std::size_t animal = 0;
    GrowthRate rate;
    const GrowthReference* reference = nullptr;
};

/// The interval `back` sessions before an animal's last one that belongs to the tank's last session.
std::optional<PartGrown> grownIn(const Casebook& book, std::size_t of, Date last, std::size_t back,
                                 const SpeciesFacts& facts) {
    const AnimalHistory& animal = book.animal(of);
    if (!animal.animal.hatchedOn || animal.animal.species != facts.species) {
        return std::nullopt;
    }
    const JudgeOptions& options = book.options();
    std::vector<const Observation*> known;
    for (const Observation* seen : book.file(of).sound) {
        const bool apart = known.empty() || seen->on - known.back()->on >= std::chrono::days(options.lagging.leastDays);
        if (seen->standardLengthMm.known() && apart && !settlingToFood(animal, seen->on, options.group)) {
            known.push_back(seen);
        }
    }
    if (known.size() < back + 2 || last - known.back()->on > std::chrono::days(options.group.sameSessionDays)) {
        return std::nullopt;
    }
    const Observation& to = *known[known.size() - 1 - back];
    const Observation& from = *known[known.size() - 2 - back];
    const auto rate = growthRate(from, to);
    const double age = static_cast<double>((from.on - *animal.animal.hatchedOn + (to.on - from.on) / 2).count());
    const GrowthReference* reference = referenceFor(facts, animal.animal, age);
    if (!rate || reference == nullptr) {
        return std::nullopt;
    }
    return PartGrown{of, rate.value(), reference};
}

/// The middle animal of one interval.
struct MiddleGrowth {
    std::vector<std::size_t> who;
    Estimate part;  ///< of the published growth
    Estimate mmPerDay;
    double published = 0.0;
    double low = 0.0;  ///< the published low end, as part
    std::string source;
};

MiddleGrowth middleOf(const std::vector<PartGrown>& all) {
    MiddleGrowth result;
    std::vector<double> parts;
    std::vector<double> rates;
    std::vector<double> published;
    std::vector<double> lows;
    double random = 0.0;
    double shared = 0.0;
    const auto n = static_cast<double>(all.size());
    for (const PartGrown& one : all) {
        const Estimate rate = one.rate.mmPerDay;
        result.who.push_back(one.animal);
        parts.push_back(rate.value / one.reference->mmPerDay);
        rates.push_back(rate.value);
        published.push_back(one.reference->mmPerDay);
        lows.push_back(one.reference->lowMmPerDay / one.reference->mmPerDay);
        random += std::pow(rate.sdRandom / one.reference->mmPerDay, 2) / n;
        shared = std::max(shared, rate.sdShared / one.reference->mmPerDay);
        result.source = one.reference->source;
    }
    const RobustSpread spread = robustSpread(parts);
    const double sd = wobbleOfMiddle(all.size()) * std::max(spread.spread, std::sqrt(random));
    result.published = median(published);
    result.part = {spread.centre, sd, shared};
    result.mmPerDay = {median(rates), sd * result.published, shared * result.published};
    result.low = *std::min_element(lows.begin(), lows.end());
    return result;
}

std::string speciesOf(const Casebook& book, TankId tank, Date on) {
    std::map<std::string, int> counts;
    for (std::size_t i = 0; i < book.size(); ++i) {
        if (tankOn(book.animal(i), on) == tank && !hasLeft(book.animal(i), on)) {
            ++counts[book.animal(i).animal.species];
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? "" : most->first;
}

std::string sentenceOf(const TankGrowth& growth) {
    const std::string who = std::to_string(growth.codes.size()) + " animals (" + listText(growth.codes) + ")";
    const std::string rates = "the middle one of " + who + " grew " + rateText(growth.ownMmPerDay) + " where " +
                              numberText(growth.publishedMmPerDay, 2) + " is published at these ages";
    return growth.low ? "The whole tank grows " + sizeWithInterval(growth.partPercent) +
                            " slower than is published of " + growth.species + ": " + rates +
                            ", and was as slow in the interval before. Source: " + growth.source + "."
                      : "The tank as a whole does not grow slower than the published low end of " + growth.species +
                            " beyond error: " + rates + ".";
}

/// The last session of a tank up to a day.
std::optional<Date> lastSession(const Casebook& book, TankId tank, Date on) {
    std::optional<Date> last;
    for (std::size_t i = 0; i < book.size(); ++i) {
        if (tankOn(book.animal(i), on) == tank && !book.file(i).sound.empty()) {
            last = std::max(last.value_or(Date{}), book.file(i).sound.back()->on);
        }
    }
    return last;
}

/// Fills in what the two intervals say.
void describe(TankGrowth& growth, const Casebook& book, const MiddleGrowth& latest, const MiddleGrowth& earlier) {
    for (std::size_t i : latest.who) {
        growth.codes.push_back(book.animal(i).animal.code);
    }
    growth.ownMmPerDay = latest.mmPerDay;
    growth.publishedMmPerDay = latest.published;
    growth.partPercent = {100.0 * (latest.part.value - 1.0), 100.0 * latest.part.sdRandom,
                          100.0 * latest.part.sdShared};
    growth.source = latest.source;
    const auto slow = [](const MiddleGrowth& one) { return one.part.value + one.part.u95() < one.low; };
    growth.low = slow(latest) && slow(earlier);
}

}  // namespace

Outcome<TankGrowth> tankGrowth(std::span<const AnimalHistory> animals, TankId tank, Date on,
                               const std::vector<SpeciesFacts>& species, const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    TankGrowth growth;
    growth.tank = tank;
    growth.species = speciesOf(book, tank, on);
    const SpeciesFacts facts = factsOf(species, growth.species);
    if (growth.species.empty() || facts.growth.empty()) {
        return Refusal{"no-reference", "No published growth of this species is on file."};
    }
    const auto last = lastSession(book, tank, on);
    std::vector<PartGrown> now;
    std::vector<PartGrown> before;
    for (std::size_t i = 0; last && i < book.size(); ++i) {
        if (tankOn(book.animal(i), on) != tank) {
            continue;
        }
        const auto latest = grownIn(book, i, *last, 0, facts);
        const auto earlier = grownIn(book, i, *last, 1, facts);
        if (latest && earlier) {
            now.push_back(*latest);
            before.push_back(*earlier);
        }
    }
    if (now.size() < kLeastInTank) {
        return Refusal{"too-few-animals",
                       "Three animals of known age need three sessions at ages of which growth is published."};
    }
    growth.on = *last;
    describe(growth, book, middleOf(now), middleOf(before));
    if (growth.low) {
        growth.since = growth.on - std::chrono::days(static_cast<int>(std::lround(now.front().rate.days)));
    }
    growth.sentence = sentenceOf(growth);
    return growth;
}

Finding tankGrowthFinding(const TankGrowth& growth, const std::string& tankCode) {
    Finding finding;
    finding.kind = FindingKind::TankLow;
    finding.tank = growth.tank;
    finding.animalCode = "tank " + tankCode;
    finding.on = growth.on;
    finding.since = growth.since;
    finding.measure = kTankGrowthMeasure;
    finding.unit = "%";
    finding.by = growth.partPercent;
    finding.sentence = growth.sentence;
    finding.otherReasons = {"colder water than in the published rearing, or other food, light and density",
                            "a hatch date that is not right", "a stock that grows otherwise than the published one",
                            "lengths measured in another way than the published ones"};
    finding.nextStep =
        "Look at food, its enrichment and how much each gets, at temperature and salinity, and at how many share the "
        "tank. If they also thin, refuse food or are listless, call the veterinarian.";
    return finding;
}

}  // namespace ringrule
