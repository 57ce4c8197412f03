// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/review.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "judge/case_file.h"
#include "judge/lagging.h"
#include "judge/tell.h"
#include "judge/thinness.h"
#include "ringrule/judge/tankmates.h"

namespace ringrule {

namespace {

const Observation* lastObservation(const AnimalHistory& animal, Date on) {
    const Observation* last = nullptr;
    for (const Observation& seen : animal.observations) {
        if (seen.on <= on) {
            last = &seen;
        }
    }
    return last;
}

/// Whether tankmates were photographed within one session of the day and this animal was not.
bool missedThisSession(const Telling& telling, const Observation& last) {
    const auto sameSession = std::chrono::days(telling.options().group.sameSessionDays);
    if (telling.on - last.on <= sameSession) {
        return false;
    }
    const auto mates = telling.book->tankmates(telling.of, telling.on);
    return std::any_of(mates.begin(), mates.end(), [&](std::size_t i) {
        const Observation* seen = lastObservation(telling.book->animal(i), telling.on);
        return seen != nullptr && telling.on - seen->on <= sameSession;
    });
}

/// Why nothing at all could be judged after the animal's last session.
Finding tellNothingJudged(const Telling& telling, const Observation& last) {
    const JudgeOptions& options = telling.options();
    if (settlingToFood(telling.animal(), last.on, options.group)) {
        return tellCannot(telling, "its food was changed less than a week before this session; a dip is usual then.",
                          "Judge again at the next session, two weeks after the change or later.");
    }
    const auto sessions = std::count_if(telling.animal().observations.begin(), telling.animal().observations.end(),
                                        [&](const Observation& seen) { return seen.on <= telling.on; });
    if (sessions < 2) {
        return tellCannot(telling, "this was its first session; growth and condition need at least two.",
                          "Photograph it again at the next session.");
    }
    if (const std::string state = stateOn(telling.animal(), last.on); !state.empty() || !last.girthFair) {
        return tellCannot(telling,
                          "it was " + (state.empty() ? std::string("carrying or brooding") : state) +
                              " and is not judged on girth, and its length could not be compared.",
                          "Judge again when the state has ended.");
    }
    if (!last.standardLengthMm.known()) {
        return tellCannot(telling, "no standard length was measured this session, and none is known from before.",
                          "Photograph it again with its tail open.");
    }
    return tellCannot(telling, "there are too few sessions or tankmates to compare it with.",
                      "Photograph it and its tankmates again at the next session.");
}

void reviewSession(const Telling& telling, const Observation& last, std::vector<Finding>& findings) {
    if (const auto why = impossible(telling.animal(), last)) {
        findings.push_back(tellImpossible(telling, *why));
        return;
    }
    const CaseFile& file = telling.book->file(telling.of);
    if (file.doubt) {
        findings.push_back(tellDoubt(telling, *file.doubt));
        return;
    }
    if (const auto jump = jumpedAhead(*telling.book, telling.of, last.on)) {
        findings.push_back(tellJump(telling, *jump));
        return;
    }
    const ThinnessVerdict thinness = judgeThinness(*telling.book, telling.of, last.on);
    const LaggingVerdict lagging = judgeLagging(*telling.book, telling.of, last.on);
    if (thinness.thin || thinness.thinner) {
        findings.push_back(tellThinness(telling, thinness));
    }
    if (lagging.behind || lagging.small || lagging.stalled) {
        findings.push_back(tellLagging(telling, lagging));
    }
    if (!thinness.judged && !lagging.judged) {
        findings.push_back(tellNothingJudged(telling, last));
    }
}

int urgency(FindingKind kind) {
    constexpr std::array kInOrder{FindingKind::Thin,
                                  FindingKind::NotFeeding,
                                  FindingKind::TankLow,
                                  FindingKind::Stalled,
                                  FindingKind::BehindTankmates,
                                  FindingKind::GettingThinner,
                                  FindingKind::MeasureDoubtful,
                                  FindingKind::CannotTell};
    return static_cast<int>(std::find(kInOrder.begin(), kInOrder.end(), kind) - kInOrder.begin());
}

double weight(const Finding& finding) {
    return finding.by.known() && finding.by.sd() > 0.0 ? std::abs(finding.by.value) / finding.by.sd() : 0.0;
}

}  // namespace

std::vector<Finding> reviewOne(const Casebook& book, std::size_t of, Date on) {
    Telling telling{&book, of, on};
    std::vector<Finding> findings;
    if (auto refusing = tellNotFeeding(telling)) {
        findings.push_back(std::move(*refusing));
    }
    const Observation* last = lastObservation(telling.animal(), telling.on);
    if (last == nullptr) {
        return findings;
    }
    if (missedThisSession(telling, *last)) {
        findings.push_back(tellCannot(
            telling, "it was not photographed with its tankmates; it was last seen on " + formatDate(last->on) + ".",
            "Look for it, and photograph it before the next session."));
    }
    if (telling.on - last->on <= std::chrono::days(telling.options().group.toldForDays)) {
        telling.on = last->on;
        reviewSession(telling, *last, findings);
    }
    return findings;
}

std::vector<Finding> reviewAnimals(std::span<const AnimalHistory> animals, Date on, const JudgeOptions& options) {
    const Casebook book(animals, on, options);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < animals.size(); ++i) {
        if (!hasLeft(animals[i], on)) {
            auto found = reviewOne(book, i, on);
            std::move(found.begin(), found.end(), std::back_inserter(findings));
        }
    }
    sortByUrgency(findings);
    return findings;
}

void sortByUrgency(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return urgency(a.kind) != urgency(b.kind) ? urgency(a.kind) < urgency(b.kind) : weight(a) > weight(b);
    });
}

}  // namespace ringrule
