// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/husbandry/species.h"
#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/outcome.h"

namespace ringrule {

/// A whole tank's growth against what is published of its species.
struct TankGrowth {
    TankId tank;
    Date on;  ///< its latest session
    std::string species;
    std::vector<std::string> codes;  ///< animals judged
    Estimate ownMmPerDay;            ///< the middle animal over the latest interval
    double publishedMmPerDay = 0.0;  ///< at the same ages
    Estimate partPercent;            ///< the middle animal's growth against the published at its age, less 100 %
    bool low = false;                ///< below the published low end, beyond error, in the latest two intervals
    std::optional<Date> since;       ///< first session that showed it, when low
    std::string sentence;
    std::string source;
};

/// The growth of a tank in its latest two intervals between sessions against the published growth of its species at
/// each animal's age (and sex, where that is known and the reference tells it). Errors of a whole session do not
/// cancel here, so that they widen the interval. The species is that of most animals of the tank. Refuses with
/// "no-reference" (nothing published is on file for these ages), "too-few-sessions" (fewer than three) or
/// "too-few-animals" (fewer than three of known age with two lengths).
[[nodiscard]] Outcome<TankGrowth> tankGrowth(std::span<const AnimalHistory> animals, TankId tank, Date on,
                                             const std::vector<SpeciesFacts>& species,
                                             const JudgeOptions& options = {});

/// What `Finding::measure` says of a tank that grows slowly: so it is told from one that thins.
inline constexpr std::string_view kTankGrowthMeasure = "growth of the tank, against published growth";

/// A tank that grows slowly as a finding, `tankCode` being the keeper's word for it. Precondition: `growth.low`.
[[nodiscard]] Finding tankGrowthFinding(const TankGrowth& growth, const std::string& tankCode);

}  // namespace ringrule
