// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "ringrule/outline/outline.h"

namespace ringrule {

/// Two parts of one animal as one outline.
struct Bridged {
    Outline outline;
    double bridgesPx = 0.0;  ///< length of both bridges together
    double facingPx = 0.0;   ///< how much of a part's boundary faces the other part, the greater of the two
};

/// The outline of both parts with the gap between their facing ends bridged by the sides of its convex hull; nothing
/// when the gap is longer than `longestGapPx`, when the parts overlap or when the bridges would cross the outline.
[[nodiscard]] std::optional<Bridged> bridged(const Outline& one, const Outline& other, double longestGapPx);

}  // namespace ringrule
