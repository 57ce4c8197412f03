// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "judge/condition.h"

namespace ringrule {

/// What the series of an animal's condition says on its last day.
struct ThinnessVerdict {
    bool judged = false;          ///< whether anything could be told
    bool thin = false;            ///< thin against its tankmates
    bool thinner = false;         ///< thinner than its own past, but not thin among its tankmates
    bool oneSessionOnly = false;  ///< rests on one session with agreeing photos and a large gap
    bool few = false;             ///< two to four tankmates: no spread is told
    ConditionMeasure measure = ConditionMeasure::Depth;
    std::optional<Date> since;
    std::vector<std::size_t> mates;
    Estimate gapPercent;        ///< against the tankmates of the session
    Estimate changePercent;     ///< against its own past; not known without one
    Estimate sinceLastPercent;  ///< against its session before
    bool lengthCarried = false;
};

/// The verdict on one animal after its session `on`, for the measure that speaks loudest.
[[nodiscard]] ThinnessVerdict judgeThinness(const Casebook& book, std::size_t of, Date on);

}  // namespace ringrule
