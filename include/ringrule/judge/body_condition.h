// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "ringrule/husbandry/species.h"
#include "ringrule/outcome.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// Mass in grams that a length lets expect: a·L^b. The interval holds the length's error only; animals of one length
/// differ in mass by tens of percent, so that this is for doses and feeds, never for judging an animal.
[[nodiscard]] Estimate massFromLength(const LengthWeight& law, const Estimate& lengthMm);

/// Fulton's condition factor 100·W/L³, W in g and L in cm (Fulton 1904; Froese 2006, J Appl Ichthyol 22:241-253). Eggs
/// and brood weigh: not for carrying animals. Only animals of like length may be compared by it.
[[nodiscard]] Estimate fultonK(const Estimate& weightG, const Estimate& lengthMm);

/// Le Cren's (1951) relative condition W/(a·L^b): 1 is as the law expects.
[[nodiscard]] Estimate relativeCondition(const Estimate& weightG, const Estimate& lengthMm, const LengthWeight& law);

/// An animal that was weighed and measured.
struct Weighed {
    double lengthMm = 0.0;
    double weightG = 0.0;
};

/// The law of one's own animals: Huber's line of ln W on ln L. Refuses with "too-few-points" (fewer than ten, or the
/// longest less than 1.5 times the shortest) or "no-length" (a length or weight that is not above zero).
[[nodiscard]] Outcome<LengthWeight> fitLengthWeight(std::span<const Weighed> animals);

}  // namespace ringrule
