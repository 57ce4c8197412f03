// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "judge/case_file.h"
#include "ringrule/judge/judge_options.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// An animal's growth between two of its sessions against that of its tankmates over the same days, in ln(length).
struct GainComparison {
    bool comparable = false;  ///< enough tankmates, and their growth exceeds the smallest real change
    Estimate own;
    double tankmates = 0.0;          ///< median of their gains
    double lag = 0.0;                ///< own less tankmates'
    double sd = 0.0;                 ///< of the lag of a healthy animal: error and spread
    double errorSd = 0.0;            ///< of the lag as measured: error only
    std::vector<std::size_t> mates;  ///< those with a gain over these days

    [[nodiscard]] double sds() const { return lag / sd; }
    [[nodiscard]] double part() const { return lag / tankmates; }
};

[[nodiscard]] GainComparison compareGain(std::span<const AnimalHistory> animals, std::span<const CaseFile> files,
                                         std::size_t of, const Observation& from, const Observation& to,
                                         const JudgeOptions& options);

/// The same for length itself on one day: `own` and `tankmates` hold ln(length).
[[nodiscard]] GainComparison compareLength(std::span<const AnimalHistory> animals, std::span<const CaseFile> files,
                                           std::size_t of, const Observation& at, const JudgeOptions& options);

}  // namespace ringrule
