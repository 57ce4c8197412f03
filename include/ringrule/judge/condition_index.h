// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// The condition index of every animal in its last session up to `on`, in the order of `animals`: observed trunk depth
/// over the depth that its tankmates' let expect at its length, times 100, as Le Cren's (1951) relative condition. Not
/// known for an animal without tankmates to compare with, without a fair session (brooding, settling to a new food) or
/// not measured.
[[nodiscard]] std::vector<Estimate> conditionIndices(std::span<const AnimalHistory> animals, Date on,
                                                     const JudgeOptions& options = {});

}  // namespace ringrule
