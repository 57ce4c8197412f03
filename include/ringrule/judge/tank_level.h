// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// A whole tank against its own past: tankmates that thin together look alike.
struct TankLevel {
    TankId tank;
    Date on;                          ///< its latest session
    std::vector<std::string> codes;   ///< animals judged
    Estimate conditionChangePercent;  ///< median over animals: depth for length now against each animal's own past
    std::optional<Date> since;        ///< first session in which it was low, when it is
    bool low = false;                 ///< fell by more than its interval in this session and the one before
    std::string sentence;
};

/// The condition of a tank after its session of `on`. Errors of a whole session (box, scale, light) do not cancel here,
/// so that they widen the interval; the expected depth follows the tank's own earlier sessions. Refuses with
/// "too-few-sessions" (fewer than four) or "too-few-animals" (fewer than three with a past).
[[nodiscard]] Outcome<TankLevel> tankLevel(std::span<const AnimalHistory> animals, TankId tank, Date on,
                                           const JudgeOptions& options = {});

/// A tank that is low as a finding, `tankCode` being the keeper's word for it. Precondition: `level.low`.
[[nodiscard]] Finding tankFinding(const TankLevel& level, const std::string& tankCode);

}  // namespace ringrule
