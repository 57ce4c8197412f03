// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/husbandry/care.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// What became of a finding after a keeper decided on it.
struct DecisionOutcome {
    enum class State {
        NoSessionSince,  ///< the animal was not photographed since: nothing can be told
        StillTold,       ///< the last session told the same again
        NoLongerTold,    ///< it did not. That does not prove that the decision helped
    };
    State state = State::NoSessionSince;
    std::optional<Date> session{};  ///< the session that says so
    Estimate by{};                  ///< how much it told then, if it did
};

/// What became of a decision on an animal's finding by the newest session up to `asOf`; `findings` are those told as of
/// that day.
[[nodiscard]] DecisionOutcome outcomeOf(const Decision& decision, std::span<const AnimalHistory> histories,
                                        std::span<const Finding> findings, Date asOf);

/// The last decision that speaks to this finding: of its animal and kind, made on what that session or a later one
/// told. Nothing when none does, or when the finding was told anew since.
[[nodiscard]] const Decision* decisionOn(const Finding& finding, std::span<const Decision> decisions);

/// The decisions whose day to look again has come by `day`, the longest due first; one that was followed by another of
/// the same animal and kind is done with.
[[nodiscard]] std::vector<Decision> decisionsDue(std::span<const Decision> decisions, Date day);

}  // namespace ringrule
