// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "judge/gain_comparison.h"

namespace ringrule {

/// How strongly growth since one of an animal's sessions speaks for a lag.
struct LagEvidence {
    std::size_t start = 0;   ///< session at which the window begins
    GainComparison gain;     ///< own and tankmates' gain over the window
    double expected = 1.0;   ///< own gain over the tankmates', as its own past lets expect
    double sds = 0.0;        ///< the lag behind that, in standard deviations of a healthy animal's; negative is behind
    double sdsBefore = 0.0;  ///< the same without the last session, 0 with one interval only
    std::size_t intervals = 0;
};

/// The evidence over the window from session `start` to session `end`, indices into `sessions`. The model is that of
/// growth with animals as random effects: in each interval a healthy animal gains its tankmates' middle gain times
/// 1 + a + e, a its own for good (sd `growthSpread`), e new in each interval (sd `monthlySpread`). What its sessions
/// before the window tell of a is shrunk toward zero by its reliability (best linear unbiased prediction, Henderson
/// 1975), and that of the tankmates' middle cancels; the photos' errors at all three ends are carried, with their
/// covariance. Nothing when growth cannot be compared.
[[nodiscard]] std::optional<LagEvidence> lagEvidence(const Casebook& book, std::size_t of,
                                                     const std::vector<const Observation*>& sessions, std::size_t start,
                                                     std::size_t end);

/// The window of two intervals or more, up to `longestWindow`, that speaks loudest after the last of `sessions`: a
/// search over the time of onset, as sequential tests of a change do (Page 1954; Lorden 1971).
[[nodiscard]] std::optional<LagEvidence> loudestLag(const Casebook& book, std::size_t of,
                                                    const std::vector<const Observation*>& sessions);

/// How much more the tankmates differ than is allowed for, as a factor on spreads; told by five or more. A few of them
/// can differ much by chance, so that what is allowed for counts as `kPriorAnimals` animals.
[[nodiscard]] double widerThanUsual(const GainComparison& gain, double usualVariance, const GroupOptions& group);

}  // namespace ringrule
