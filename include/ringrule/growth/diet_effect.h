// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/growth/group_growth.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/mixed_model.h"
#include "ringrule/statistics/resampling.h"

namespace ringrule {

/// A length on a day of a comparison (days from its start, the same start for all animals).
struct DayLength {
    double day = 0.0;
    double lengthMm = 0.0;
    double weight = 1.0;  ///< relative: 1/sd², or 1 for all alike
};

/// One animal that kept one diet in one tank throughout a comparison. Ids are whatever tells them apart.
struct DietAnimal {
    std::int64_t animal = 0;
    std::int64_t diet = 0;
    std::int64_t tank = 0;
    std::vector<DayLength> lengths;
};

/// What the effect of a diet is told in.
enum class EffectUnit { MmPerDay, PercentPerDay };

enum class DietVerdict {
    Differ,       ///< adjusted p at or below 0.05
    Alike,        ///< the interval of the difference leaves out any difference that matters
    TooFewToTell  ///< neither
};

struct DietEffectOptions {
    /// The scale; absent: chosen by maximum likelihood and AICc.
    std::optional<EffectUnit> unit;
    /// A difference in growth that matters to a keeper, as part of the mean growth of the two diets (a choice, no
    /// source).
    double mattersAsPart = 0.2;
    double power = 0.8;  ///< asked of "how many would be enough", at 5 % two-sided
    PermutationOptions permutation;
};

/// Growth on one diet.
struct DietGrowth {
    std::int64_t diet = 0;
    int animals = 0;
    int tanks = 0;
    MixedEstimate rate;  ///< mean growth, in the unit of the comparison, with its 95 % interval
};

/// What would be enough to tell a difference that matters.
struct EnoughToTell {
    double difference = 0.0;          ///< the difference that matters, in the unit of the comparison
    std::optional<int> unitsPerDiet;  ///< animals (or tanks) on each diet over the same time; absent: over 1000
    std::optional<double> months;     ///< total time with the units at hand; absent: no time is enough
    /// Units are so few that even wholly separate groups give no p at or below 0.05.
    bool permutationCannot = false;
};

/// Two diets compared: second minus first.
struct DietEffect {
    std::size_t first = 0;  ///< indices into `groups`
    std::size_t second = 0;
    std::optional<MixedEstimate> difference;  ///< absent when the units cannot tell one (a single tank on a diet)
    double effect = 0.0;                      ///< the difference itself, always told
    std::optional<PermutationResult> permutation;
    double adjustedP = 1.0;  ///< permutation p adjusted over all pairs (Benjamini & Hochberg 1995)
    DietVerdict verdict = DietVerdict::TooFewToTell;
    EnoughToTell enough;
    std::string sentence;  ///< for a keeper: what, how much, with its interval, and what would be enough
};

struct DietEffects {
    EffectUnit unit = EffectUnit::MmPerDay;
    bool curved = false;                ///< growth bends over time: a bend common to all diets is in the model
    bool tanksAreUnits = false;         ///< whole tanks were fed: tanks, not animals, are compared
    MixedFit fit;                       ///< of animals (intercepts and slopes), by restricted likelihood
    std::vector<DietGrowth> groups;     ///< in order of diet id
    std::vector<DietEffect> pairs;      ///< every pair
    std::optional<MixedFTest> overall;  ///< all slopes alike? Absent with one pair or when tanks are the units
    std::vector<std::string> cautions;
};

/// The effect of diets on growth: a mixed model of length (or its logarithm) on days with each animal's own intercept
/// and slope, the diet a fixed effect on both. The p value is by permutation of whole animals over diets (within their
/// tank, when several tanks held more than one diet), or of whole tanks when every tank had one diet, exact when there
/// are few. Refuses with "too-few-groups" (one diet only), "animal-in-two-tanks", "animal-on-two-diets", "no-length",
/// "too-few-points" (an animal with one length or all on one day is left out; refused when a diet loses all of its
/// animals), or as `fitMixed` does.
[[nodiscard]] Outcome<DietEffects> compareDietEffects(std::span<const DietAnimal> animals,
                                                      const DietEffectOptions& options = {});

}  // namespace ringrule
