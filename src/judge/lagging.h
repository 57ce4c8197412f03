// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "judge/case_file.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// What an animal's growth says on the day of a session.
struct LaggingVerdict {
    bool judged = false;
    bool behind = false;   ///< grows less than its tankmates
    bool small = false;    ///< behind in length itself, growing in step
    bool stalled = false;  ///< did not grow where growth was expected
    bool oneIntervalOnly = false;
    bool few = false;
    std::optional<Date> since;  ///< first session at which the lag showed
    std::vector<std::size_t> mates;
    Estimate lagPercent;     ///< own growth against the tankmates' median, −100 % is none
    Estimate lengthPercent;  ///< length against the tankmates' median
    Estimate ownMmPerDay;
    Estimate expectedMmPerDay;  ///< at the animal's own length, by the tankmates' growth or its own past
    bool expectedFromPast = false;
    double windowDays = 0.0;
};

/// The verdict on one animal after its session `on`.
[[nodiscard]] LaggingVerdict judgeLagging(const Casebook& book, std::size_t of, Date on);

/// How far the gain of an animal between two days exceeds what tankmates gained, if it does so beyond belief (ln).
[[nodiscard]] std::optional<Estimate> jumpedAhead(const Casebook& book, std::size_t of, Date on);

}  // namespace ringrule
