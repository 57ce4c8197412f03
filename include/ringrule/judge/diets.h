// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/growth/diet_effect.h"
#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/group_tests.h"
#include "ringrule/statistics/resampling.h"

namespace ringrule {

enum class AfterChange {
    TooEarly,      ///< too few sessions after the change, or a change that cannot yet exceed the error
    Improved,      ///< better by more than its 95 % interval, tankmates allowed for
    NoRealChange,  ///< no better: the interval holds zero, and is narrow enough to have shown a change that matters
    Worse,
};

/// One measure before and after a change of food, with what the tankmates did over the same sessions.
struct BeforeAfter {
    Estimate before;
    Estimate after;
    Estimate change;           ///< after − before
    Estimate tankmatesChange;  ///< not known without two tankmates
    /// The change less what the tankmates' lets expect (difference in differences); its interval holds the errors and
    /// what growth or depth of a healthy animal varies from session to session. Not known without two tankmates.
    Estimate beyondTankmates;
    AfterChange verdict = AfterChange::TooEarly;
};

/// An animal before and after its latest change of food.
struct DietChange {
    AnimalId animal;
    std::string animalCode;
    Date changedOn;
    DietId from;
    DietId to;
    std::vector<Date> sessionsBefore;
    std::vector<Date> sessionsAfter;  ///< those in the first week after the change are left out
    BeforeAfter rateMmPerDay;         ///< growth in length
    BeforeAfter conditionPercent;     ///< depth against what the tankmates' depths let expect at its length, 0 is alike
    std::string sentence;             ///< never a cause: "improved after the change while its tankmates did not"
};

/// Rate and condition before and after the latest change of food up to `on`, over at most three sessions on either
/// side. The animal was chosen because it was low, so that some of an improvement may be chance; the sentence says so.
/// Refuses with "no-change-of-food" or "too-few-sessions" (fewer than two before).
[[nodiscard]] Outcome<DietChange> dietChange(std::span<const AnimalHistory> animals, std::size_t of, Date on,
                                             const JudgeOptions& options = {});

/// One diet's animals: growth of each over a time.
struct DietGroup {
    DietId diet;
    std::vector<std::string> codes;
    std::vector<double> mmPerDay;  ///< one an animal
    double meanMmPerDay = 0.0;
    int tanks = 0;
};

/// Two diets compared over a time.
struct DietPair {
    std::size_t first = 0;  ///< indices into `groups`
    std::size_t second = 0;
    WelchResult welch;
    PermutationResult permutation;
    double adjustedP = 1.0;  ///< permutation p-value adjusted over all pairs (Benjamini & Hochberg 1995)
};

struct DietComparison {
    std::vector<DietGroup> groups;
    std::vector<DietPair> pairs;  ///< of groups with three or more animals
    std::vector<std::string> cautions;
};

/// Growth of animals that kept one diet from one day to another, by diet. When a diet went to whole tanks, tanks and
/// not animals are the experimental unit, and a caution says so. Refuses with "too-few-groups".
[[nodiscard]] Outcome<DietComparison> compareDiets(std::span<const AnimalHistory> animals, Date from, Date to,
                                                   const JudgeOptions& options = {});

/// The animals that kept one diet in one tank throughout a time, with their believed lengths, for `compareDietEffects`.
/// Days count from `from`, lengths by the inverse of their variance.
[[nodiscard]] std::vector<DietAnimal> dietAnimals(std::span<const AnimalHistory> animals, Date from, Date to,
                                                  const JudgeOptions& options = {});

}  // namespace ringrule
