// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "judge/case_file.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// Which part of the body tells condition: what one view really saw.
enum class ConditionMeasure { Depth, Width };

/// An animal's condition in one session, against the same session's tankmates where there are any. All in ln.
struct ConditionPoint {
    const Observation* seen = nullptr;
    double gap = 0.0;       ///< observed over expected at that length, less the tankmates' median; negative is thin
    double own = 0.0;       ///< observed over expected at that length by the group's line, whatever the session
    double sd = 0.0;        ///< error of the gap: own photos, tankmates' median, slope
    double ownSd = 0.0;     ///< the part of it that the photos of this animal carry
    std::size_t mates = 0;  ///< tankmates in that session
    bool lengthCarried = false;  ///< no standard length that day: the last known one was used, which hides thinness
};

/// All that is needed to judge condition on one day.
struct ConditionSeries {
    std::vector<ConditionPoint> points;  ///< fair sessions of the animal, in order, the last being the day's
    std::vector<std::size_t> mates;      ///< tankmates whose observations made the reference
    double between = 0.0;                ///< spread between tankmates, ln
    double within = 0.0;                 ///< variation of one animal from session to session, ln
};

/// The series of an animal up to its session `on`, the reference being its tankmates of that day only (never itself):
/// an allometric line ln(depth) on ln(length) by Huber's regression, as Le Cren's (1951) relative condition. Without
/// tankmates the animal's own mean stands in, and `mates` is empty. One tankmate is a measure of what a session does to
/// both, not of what is usual: a change of the gap may then be either's.
[[nodiscard]] ConditionSeries conditionSeries(const Casebook& book, std::size_t of, Date on, ConditionMeasure measure);

}  // namespace ringrule
