// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "judge/case_file.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// Standard deviations to either side that hold 95 % of normal values.
inline constexpr double kZ95 = 1.959963984540054;

/// An animal's growth between two of its sessions against that of its tankmates over the same days, in ln(length).
struct GainComparison {
    bool comparable = false;  ///< a tankmate at least, and their growth exceeds the smallest real change
    Estimate own;
    double tankmates = 0.0;          ///< median of their gains
    double lag = 0.0;                ///< own less tankmates'
    double sd = 0.0;                 ///< of the lag of a healthy animal: error and spread
    double errorSd = 0.0;            ///< of the lag as measured: error only
    double mateErrorSd = 0.0;        ///< the part of it that measuring the tankmates brings
    double matesSpread = 0.0;        ///< robust spread of the tankmates' gains, their own errors in it
    double matesOwnErrorSd = 0.0;    ///< of one tankmate's gain
    std::vector<std::size_t> mates;  ///< those with a gain over these days

    [[nodiscard]] double sds() const { return lag / sd; }
    [[nodiscard]] double part() const { return lag / tankmates; }
};

[[nodiscard]] GainComparison compareGain(const Casebook& book, std::size_t of, const Observation& from,
                                         const Observation& to);

/// The same for length itself on one day: `own` and `tankmates` hold ln(length).
[[nodiscard]] GainComparison compareLength(const Casebook& book, std::size_t of, const Observation& at);

/// How much the middle of so many healthy animals wobbles, as part of their spread: 1.2533/√n of a median (asymptotic,
/// normal values), 1/√n of one or two, whose median is their mean.
[[nodiscard]] double wobbleOfMiddle(std::size_t count);

}  // namespace ringrule
