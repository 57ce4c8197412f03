// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/decision_outcome.h"

#include <algorithm>

namespace ringrule {
namespace {

bool sameSubject(const Decision& a, const Decision& b) {
    return a.animal == b.animal && a.tank == b.tank && a.finding == b.finding;
}

bool isAbout(const Decision& decision, const Finding& finding) {
    if (decision.finding != findingName(finding.kind)) return false;
    return finding.tank ? decision.tank == finding.tank : decision.animal && *decision.animal == finding.animal;
}

/// Whether the animal tells of the decision's subject: it is the animal, or lives in the tank.
bool isOf(const AnimalHistory& history, const Decision& decision) {
    if (decision.animal) return history.animal.id == *decision.animal;
    return std::any_of(history.stays.begin(), history.stays.end(),
                       [&](const Stay& stay) { return decision.tank == stay.tank; });
}

/// By day; of one day, by the order in which they were written.
bool later(const Decision& a, const Decision& b) {
    return a.on != b.on ? a.on > b.on : a.number > b.number;
}

}  // namespace

DecisionOutcome outcomeOf(const Decision& decision, std::span<const AnimalHistory> histories,
                          std::span<const Finding> findings, Date asOf) {
    DecisionOutcome outcome;
    // What was decided on is known; a session of the same day is not a later one.
    const Date decidedOn = std::max(decision.on, decision.findingOn.value_or(decision.on));
    for (const AnimalHistory& history : histories) {
        if (!isOf(history, decision)) continue;
        for (const Observation& seen : history.observations)
            if (seen.on > decidedOn && seen.on <= asOf)
                outcome.session = std::max(outcome.session, std::optional(seen.on));
    }
    if (!outcome.session) return outcome;
    outcome.state = DecisionOutcome::State::NoLongerTold;
    for (const Finding& finding : findings) {
        if (!isAbout(decision, finding) || finding.on < *outcome.session) continue;
        outcome.state = DecisionOutcome::State::StillTold;
        outcome.by = finding.by;
    }
    return outcome;
}

const Decision* decisionOn(const Finding& finding, std::span<const Decision> decisions) {
    const Decision* last = nullptr;
    for (const Decision& decision : decisions) {
        const bool same = isAbout(decision, finding) && decision.findingOn.value_or(decision.on) >= finding.on;
        if (same && (last == nullptr || later(decision, *last))) last = &decision;
    }
    return last;
}

std::vector<Decision> decisionsDue(std::span<const Decision> decisions, Date day) {
    std::vector<Decision> due;
    for (const Decision& decision : decisions) {
        const bool followed = std::any_of(decisions.begin(), decisions.end(), [&](const Decision& other) {
            return sameSubject(decision, other) && later(other, decision);
        });
        if (!followed && decision.followUpOn && *decision.followUpOn <= day) due.push_back(decision);
    }
    std::stable_sort(due.begin(), due.end(),
                     [](const Decision& a, const Decision& b) { return *a.followUpOn < *b.followUpOn; });
    return due;
}

}  // namespace ringrule
