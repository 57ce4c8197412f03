// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// What goes wrong with one animal of a simulated group.
enum class Failing {
    Nothing,
    SlowerGrowth,  ///< it grows at `growthPart` of what it would have grown
    LosingDepth,   ///< its trunk loses `depthLossPerWeek` of its depth each week
};

/// A group of like animals in one tank, photographed at even intervals. All spreads are parts (0.05 is 5 %).
struct GroupTrial {
    int animals = 6;  ///< the failing one among them
    double firstLengthMm = 70.0;
    double mmPerDay = 0.4;        ///< growth at the first session
    double asymptoteMm = 0.0;     ///< growth levels off toward this length (von Bertalanffy); 0: straight on
    int daysBetween = 30;         ///< from session to session
    int sessionsBefore = 4;       ///< sessions up to the day the trouble starts, that day's session included
    int sessionsAfter = 3;        ///< sessions after it
    double onsetDays = 0.0;       ///< the trouble starts this long after the last of `sessionsBefore`
    double sizeSpread = 0.05;     ///< of length at the first session
    double growthSpread = 0.05;   ///< of growth, for good
    double monthlySpread = 0.05;  ///< of growth, anew in each interval
    double buildSpread = 0.05;    ///< of trunk depth at one length, for good
    double depthWander = 0.015;   ///< of trunk depth from session to session, half of it carried over to the next
    double depthSlope = 1.2;      ///< of ln(depth) on ln(length)
    double lengthError = 0.0043;  ///< of a session's length
    double depthError = 0.0031;   ///< of a session's depth
    double sharedError = 0.002;   ///< common to all measures of a session
    int sidePhotos = 3;
    Failing failing = Failing::Nothing;
    double growthPart = 0.6;
    double depthLossPerWeek = 0.015;
    int groups = 2000;
    std::uint64_t seed = 1;
};

/// A share of trials with its 95 % interval (Wilson 1927), which says how well so many trials tell it.
struct Share {
    int hits = 0;
    int trials = 0;
    double value = 0.0;
    double lower = 0.0;
    double upper = 1.0;
};

struct TrialResult {
    std::vector<Share> foundBy;  ///< the failing animal found by the first, second, … session after the trouble started
    // Of a trial in which nothing fails:
    long healthyAnimalMonths = 0;    ///< animal-intervals between sessions
    int falseEpisodes = 0;           ///< new episodes of any finding but "cannot tell" on a healthy animal
    double falsePer100Months = 0.0;  ///< false episodes for 100 animal-months…
    double falseLower = 0.0;         ///< …with its 95 % interval (exact Poisson, Garwood 1936)
    double falseUpper = 0.0;
    std::vector<int> falseByKind;  ///< by `FindingKind`
};

/// One simulated group of a trial; the failing animal is the first. `group` counts from 0.
[[nodiscard]] std::vector<AnimalHistory> simulatedGroup(const GroupTrial& trial, int group);

/// How soon the rules find the failing animal, and how often they flag a healthy one, over `trial.groups` simulated
/// groups: every session is reviewed as it would have been. Found is any finding but "cannot tell" and "measure
/// doubtful" after the trouble started; false is any but "cannot tell" in a trial in which nothing fails. Repeatable:
/// one seed gives one answer. Refuses with "bad-trial" when a number makes no sense.
[[nodiscard]] Outcome<TrialResult> timeToNotice(const GroupTrial& trial, const JudgeOptions& options = {});

/// A trial that resembles a tank as its sessions up to a day show it: how many animals, their length, growth and
/// spreads (those of `GroupTrial` where fewer than five animals tell none), what a session's length and depth err by,
/// how often it is photographed. Refuses with "too-few-animals" (fewer than two seen twice).
[[nodiscard]] Outcome<GroupTrial> trialLike(std::span<const AnimalHistory> animals, TankId tank, Date on,
                                            const JudgeOptions& options = {});

}  // namespace ringrule
