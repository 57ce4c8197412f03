// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/time_to_notice.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "judge/case_file.h"
#include "ringrule/judge/review.h"
#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

constexpr std::size_t kKinds = static_cast<std::size_t>(FindingKind::CannotTell) + 1;

bool countsAsFound(FindingKind kind) {
    return kind != FindingKind::CannotTell && kind != FindingKind::MeasureDoubtful;
}

using Flags = std::set<std::pair<std::int64_t, FindingKind>>;

Date sessionDay(const std::vector<AnimalHistory>& animals, int session) {
    return animals.front().observations[static_cast<std::size_t>(session)].on;
}

/// The first session after the trouble started, counted from 0, in which the failing animal is found; or none.
std::optional<int> firstNoticed(const GroupTrial& trial, int group, const JudgeOptions& options) {
    const auto animals = simulatedGroup(trial, group);
    for (int after = 0; after < trial.sessionsAfter; ++after) {
        const Date on = sessionDay(animals, trial.sessionsBefore + after);
        const auto findings = reviewOne(Casebook(animals, on, options), 0, on);
        if (std::any_of(findings.begin(), findings.end(), [](const Finding& one) { return countsAsFound(one.kind); })) {
            return after;
        }
    }
    return std::nullopt;
}

/// Counts what is newly said of healthy animals, session by session.
void countFalse(const GroupTrial& trial, int group, const JudgeOptions& options, TrialResult& result) {
    const auto animals = simulatedGroup(trial, group);
    Flags before;
    for (int s = 1; s < trial.sessionsBefore + trial.sessionsAfter; ++s) {
        Flags now;
        for (const Finding& finding : reviewAnimals(animals, sessionDay(animals, s), options)) {
            if (finding.kind == FindingKind::CannotTell) {
                continue;
            }
            now.emplace(finding.animal.value, finding.kind);
            if (!before.contains({finding.animal.value, finding.kind})) {
                ++result.falseEpisodes;
                ++result.falseByKind[static_cast<std::size_t>(finding.kind)];
            }
        }
        before = std::move(now);
        result.healthyAnimalMonths += trial.animals;
    }
}

bool isPart(double value) {
    return value >= 0.0 && value < 1.0;
}

std::optional<Refusal> refused(const GroupTrial& trial) {
    if (trial.animals < 1 || trial.groups < 1 || trial.sessionsBefore < 1 || trial.sessionsAfter < 1 ||
        trial.daysBetween < 1) {
        return Refusal{"bad-trial", "A trial needs an animal, a group, a session before and one after, a day apart."};
    }
    const bool growing = trial.firstLengthMm > 0.0 && trial.mmPerDay >= 0.0 &&
                         (trial.asymptoteMm == 0.0 || trial.asymptoteMm > trial.firstLengthMm);
    if (!growing) {
        return Refusal{"bad-trial", "Lengths must be above zero, growth not below, the final length above the first."};
    }
    for (double part : {trial.sizeSpread, trial.growthSpread, trial.monthlySpread, trial.buildSpread, trial.depthWander,
                        trial.lengthError, trial.depthError, trial.sharedError, trial.depthLossPerWeek}) {
        if (!isPart(part)) {
            return Refusal{"bad-trial", "Spreads, errors and losses are parts from 0 to below 1 (0.05 is 5 %)."};
        }
    }
    return std::nullopt;
}

}  // namespace

Outcome<TrialResult> timeToNotice(const GroupTrial& trial, const JudgeOptions& options) {
    if (const auto refusal = refused(trial)) {
        return *refusal;
    }
    TrialResult result;
    result.falseByKind.assign(kKinds, 0);
    std::vector<int> found(static_cast<std::size_t>(trial.sessionsAfter), 0);
    for (int group = 0; group < trial.groups; ++group) {
        if (trial.failing == Failing::Nothing) {
            countFalse(trial, group, options, result);
        } else if (const auto first = firstNoticed(trial, group, options)) {
            for (std::size_t after = static_cast<std::size_t>(*first); after < found.size(); ++after) {
                ++found[after];
            }
        }
    }
    for (int hits : trial.failing == Failing::Nothing ? std::vector<int>{} : found) {
        const auto interval = wilsonInterval(hits, trial.groups);
        result.foundBy.push_back(
            {hits, trial.groups, static_cast<double>(hits) / trial.groups, interval.lower, interval.upper});
    }
    // The months lie between sessions, so that one review stands for one interval.
    const double months = static_cast<double>(result.healthyAnimalMonths) * trial.daysBetween / 30.0;
    if (months > 0.0) {
        const double events = result.falseEpisodes;
        result.falsePer100Months = 100.0 * events / months;
        result.falseLower = events > 0.0 ? 50.0 * chiSquaredQuantile(0.025, 2.0 * events) / months : 0.0;
        result.falseUpper = 50.0 * chiSquaredQuantile(0.975, 2.0 * events + 2.0) / months;
    }
    return result;
}

}  // namespace ringrule
