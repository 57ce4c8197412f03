// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <limits>

namespace ringrule {

/// Half-width of a normal's 95 % interval in standard deviations.
inline constexpr double kSdsInHalf95 = 1.959963984540054;

/// A measured number. `sdRandom` is what repeat photos average out; `sdShared` is the part that all photos of one
/// set-up have in common (scale, lens, depth in the box): it does not shrink with repeats, cancels between tankmates of
/// one session and adds between set-ups. Both are standard deviations in the unit of `value`. Never filled in = not
/// known.
struct Estimate {
    double value = std::numeric_limits<double>::quiet_NaN();
    double sdRandom = 0.0;
    double sdShared = 0.0;

    [[nodiscard]] bool known() const { return std::isfinite(value); }
    [[nodiscard]] double sd() const { return std::hypot(sdRandom, sdShared); }
    /// Half-width of the 95 % interval (1.96 standard deviations).
    [[nodiscard]] double u95() const { return kSdsInHalf95 * sd(); }
};

}  // namespace ringrule
