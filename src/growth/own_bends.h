// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "ringrule/growth/group_growth.h"

namespace ringrule {

/// One value of one animal: the columns of its curve, what was seen, and its weight.
struct BendRow {
    int animal = 0;
    double sinceDays = 0.0;  ///< since the youngest age of the group
    std::array<double, 3> x{};
    double y = 0.0;
    double weight = 1.0;
};

/// What a bend is.
struct BendKind {
    bool common = false;                   ///< drawn to a bend common to all animals, not to none
    std::optional<Saturation> saturation;  ///< a rate of its own, not a third column
    double slope = 0.0;                    ///< of the group, from which own rates are sought
};

/// The covariate of a saturating curve at own k, and its derivative by ln k.
[[nodiscard]] std::array<double, 2> saturated(const Saturation& saturation, double sinceDays, double logRate);

/// Own bends of `animals` animals, drawn to a common bend or to none. Their spread is that under which animals' own
/// bends would differ more than they do nine times in ten (eight to six from six animals on), by the F distribution: a
/// spread that is taken too small makes intervals too short, one too large only makes them wider. Nothing when that
/// spread is zero or too few animals were seen at four ages. Rows in order of animals.
[[nodiscard]] std::optional<OwnBends> ownBends(std::span<const BendRow> rows, std::size_t animals,
                                               const BendKind& kind);

/// The value of an animal's own curve at the columns `x`; `errorVariance` as in `predictGroup`. Precondition: told.
[[nodiscard]] MixedEstimate predictBend(const OwnBends& bends, std::size_t animal, const std::array<double, 3>& x,
                                        double errorVariance);

}  // namespace ringrule
