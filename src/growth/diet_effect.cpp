// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/diet_effect.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "growth/diet_data.h"
#include "growth/diet_units.h"
#include "growth/diet_words.h"
#include "ringrule/statistics/group_tests.h"

namespace ringrule {

namespace {

constexpr double kSignificant = 0.05;
constexpr std::size_t kDaysForBend = 4;

std::vector<DietDesign> designsFor(const DietData& data, const DietEffectOptions& options) {
    std::vector<DietDesign> designs;
    const bool blocks = !data.ownTanks && data.tanks > 1;
    for (EffectUnit unit : {EffectUnit::MmPerDay, EffectUnit::PercentPerDay}) {
        if (options.unit && *options.unit != unit) {
            continue;
        }
        designs.push_back({unit, false, blocks});
        if (data.days >= kDaysForBend) {
            designs.push_back({unit, true, blocks});
        }
    }
    return designs;
}

/// ln of the density of a length over that of what is modelled, 100·ln L: the Jacobian, summed.
double logJacobian(const DietData& data, EffectUnit unit) {
    double sum = 0.0;
    for (const DietData::Animal& animal : data.animals) {
        for (const DayLength& one : animal.lengths) {
            sum += unit == EffectUnit::PercentPerDay ? std::log(100.0 / one.lengthMm) : 0.0;
        }
    }
    return sum;
}

struct Chosen {
    DietDesign design;
    MixedFit fit;
};

/// The design of least AICc by maximum likelihood, fitted by restricted likelihood. A design that is too rich for an
/// AICc still counts when it is the only kind.
Outcome<Chosen> choose(const DietData& data, const std::vector<DietDesign>& designs) {
    Refusal last{"too-few-points", "There are too few lengths to compare diets; add animals or sessions."};
    std::optional<DietDesign> best;
    double least = std::numeric_limits<double>::infinity();
    for (const DietDesign& design : designs) {
        const auto fit = fitMixed(mixedDataOf(data, design), MixedCriterion::MaximumLikelihood);
        if (!fit) {
            last = fit.refusal();
            if (last.reason == "no-scatter") {
                return last;
            }
            continue;
        }
        const double aicc = mixedAicc(fit.value()) - 2.0 * logJacobian(data, design.unit);
        if (!best || aicc < least) {
            best = design;
            least = aicc;
        }
    }
    if (!best) {
        return last;
    }
    auto fit = fitMixed(mixedDataOf(data, *best));
    if (!fit) {
        return fit.refusal();
    }
    return Chosen{*best, std::move(fit).value()};
}

/// Weights on the columns of the design that give the growth a day on one diet, less that on another if one is named.
std::vector<double> slopeRow(const DietData& data, const Chosen& chosen, std::optional<std::size_t> first,
                             std::size_t second) {
    std::vector<double> row(chosen.fit.beta.size(), 0.0);
    row[data.diets.size() + second] = 1.0 / data.unitDays;
    if (first) {
        row[data.diets.size() + *first] = -1.0 / data.unitDays;
        return row;
    }
    // Growth on one diet is told for the mean of all tanks, not for the first of them.
    const std::size_t before = 2 * data.diets.size() + (chosen.design.curved ? 1 : 0);
    for (std::size_t column = before + 1; column < row.size(); column += 2) {
        row[column] = 1.0 / (data.unitDays * data.tanks);
    }
    return row;
}

/// All that the pairs are told from.
struct Compared {
    DietData data;
    Chosen chosen;
    std::vector<FedUnit> units;
    UnitMeans means;
    double lastingVariance = 0.0;
    double errorVariance = 0.0;
    bool fromMeans = false;  ///< intervals rest on the units' own means, not on the mixed model
    bool withinTanks = false;
    bool tanks = false;
};

Compared compared(DietData data, Chosen chosen) {
    Compared result{std::move(data), std::move(chosen), {}, {}};
    const MixedFit& fit = result.chosen.fit;
    const DietData& from = result.data;
    const double bend = result.chosen.design.curved ? fit.beta[2 * from.diets.size()] : 0.0;
    const double slopeSd = fit.slopeSd() / from.unitDays;
    result.lastingVariance = slopeSd * slopeSd;
    result.errorVariance = fit.residualSd * fit.residualSd;
    result.units =
        animalUnits(from, ownSlopes(from, result.chosen.design, bend), result.lastingVariance, result.errorVariance);
    const bool oneEach = from.tanks == static_cast<int>(from.animals.size());
    result.tanks = from.ownTanks && !oneEach;
    if (result.tanks) {
        result.units = tankUnits(from, result.units);
    }
    result.withinTanks = result.chosen.design.tankBlocks;
    result.means = unitMeans(result.units, from.diets.size());
    result.fromMeans = result.tanks || (fit.boundary && !result.withinTanks);
    return result;
}

std::optional<MixedEstimate> differenceOf(const Compared& all, std::size_t first, std::size_t second) {
    return all.fromMeans ? all.means.difference(first, second)
                         : contrast(all.chosen.fit, slopeRow(all.data, all.chosen, first, second));
}

DietGrowth growthOn(const Compared& all, std::size_t diet) {
    DietGrowth growth;
    growth.diet = all.data.diets[diet];
    growth.tanks = static_cast<int>(all.data.tanksOf[diet].size());
    for (const DietData::Animal& animal : all.data.animals) {
        growth.animals += animal.diet == diet ? 1 : 0;
    }
    const auto told = all.fromMeans ? all.means.rate(diet)
                                    : contrast(all.chosen.fit, slopeRow(all.data, all.chosen, std::nullopt, diet));
    growth.rate = told.value_or(MixedEstimate{});
    if (!told) {
        growth.rate.value = all.means.mean[diet];
        growth.rate.standardError = std::numeric_limits<double>::quiet_NaN();
        growth.rate.lower95 = growth.rate.upper95 = growth.rate.standardError;
    }
    return growth;
}

PowerQuestion questionFor(const Compared& all, const DietEffect& pair, double difference, double power) {
    PowerQuestion question;
    question.difference = difference;
    question.unitVariance = all.means.variance;
    question.lastingVariance = all.lastingVariance;
    question.errorVariance = all.errorVariance;
    question.firstUnits = all.means.count[pair.first];
    question.secondUnits = all.means.count[pair.second];
    question.timeHelps = !all.tanks;
    question.power = power;
    double gaps = 0.0;
    double span = 0.0;
    for (const DietData::Animal& animal : all.data.animals) {
        span += animal.lengths.back().day - animal.lengths.front().day;
        gaps += static_cast<double>(animal.lengths.size() - 1);
    }
    question.daysBetween = span / gaps;
    return question;
}

DietVerdict verdictOf(const DietEffect& pair, double matters) {
    if (pair.permutation && pair.adjustedP <= kSignificant) {
        return DietVerdict::Differ;
    }
    if (pair.difference && pair.difference->lower95 > -matters && pair.difference->upper95 < matters) {
        return DietVerdict::Alike;
    }
    return DietVerdict::TooFewToTell;
}

void adjust(std::vector<DietEffect>& pairs) {
    std::vector<double> tested;
    for (const DietEffect& pair : pairs) {
        if (pair.permutation) {
            tested.push_back(pair.permutation->pTwoSided);
        }
    }
    const std::vector<double> adjusted = benjaminiHochberg(tested);
    std::size_t next = 0;
    for (DietEffect& pair : pairs) {
        if (pair.permutation) {
            pair.adjustedP = adjusted[next++];
        }
    }
}

std::vector<DietEffect> pairsOf(const Compared& all, const DietEffectOptions& options) {
    std::vector<DietEffect> pairs;
    for (std::size_t i = 0; i < all.data.diets.size(); ++i) {
        for (std::size_t j = i + 1; j < all.data.diets.size(); ++j) {
            DietEffect pair;
            pair.first = i;
            pair.second = j;
            pair.difference = differenceOf(all, i, j);
            pair.effect = pair.difference ? pair.difference->value : all.means.mean[j] - all.means.mean[i];
            pair.permutation = permuted(all.units, i, j, all.withinTanks, options.permutation);
            pairs.push_back(std::move(pair));
        }
    }
    adjust(pairs);
    return pairs;
}

void tellCautions(const Compared& all, DietEffects& effects) {
    effects.cautions = all.data.cautions;
    if (all.tanks) {
        effects.cautions.emplace_back(
            "Whole tanks were fed: tanks, not animals, are compared, and any other difference between the tanks looks "
            "like an effect of food.");
    } else if (all.data.tanks > 1 && !all.withinTanks && !all.data.ownTanks) {
        effects.cautions.emplace_back(
            "Tanks held the diets too unevenly to tell food from tank: a difference between tanks may look like one of "
            "food.");
    } else if (all.fromMeans) {
        effects.cautions.emplace_back(
            "The model found no spread of growth between animals, so that intervals rest on each animal's own growth.");
    }
}

std::optional<MixedFTest> overallTest(const Compared& all) {
    if (all.fromMeans || all.data.diets.size() < 3) {
        return std::nullopt;
    }
    std::vector<std::vector<double>> rows;
    for (std::size_t diet = 1; diet < all.data.diets.size(); ++diet) {
        rows.push_back(slopeRow(all.data, all.chosen, 0, diet));
    }
    return jointTest(all.chosen.fit, rows);
}

DietEffects effectsFrom(const Compared& all, const DietEffectOptions& options) {
    DietEffects effects;
    effects.unit = all.chosen.design.unit;
    effects.curved = all.chosen.design.curved;
    effects.tanksAreUnits = all.tanks;
    effects.fit = all.chosen.fit;
    for (std::size_t diet = 0; diet < all.data.diets.size(); ++diet) {
        effects.groups.push_back(growthOn(all, diet));
    }
    effects.pairs = pairsOf(all, options);
    for (DietEffect& pair : effects.pairs) {
        const double mean = 0.5 * (effects.groups[pair.first].rate.value + effects.groups[pair.second].rate.value);
        const double matters = options.mattersAsPart * std::abs(mean);
        pair.verdict = verdictOf(pair, matters);
        pair.enough = enoughToTell(questionFor(all, pair, matters, options.power));
        pair.sentence = dietSentence(effects, pair);
    }
    effects.overall = overallTest(all);
    tellCautions(all, effects);
    return effects;
}

}  // namespace

Outcome<DietEffects> compareDietEffects(std::span<const DietAnimal> animals, const DietEffectOptions& options) {
    auto data = dietData(animals);
    if (!data) {
        return data.refusal();
    }
    auto designs = designsFor(data.value(), options);
    auto chosen = choose(data.value(), designs);
    if (!chosen && designs.front().tankBlocks) {
        for (DietDesign& design : designs) {
            design.tankBlocks = false;
        }
        chosen = choose(data.value(), designs);
    }
    if (!chosen) {
        return chosen.refusal();
    }
    return effectsFrom(compared(std::move(data).value(), std::move(chosen).value()), options);
}

}  // namespace ringrule
