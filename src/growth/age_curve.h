// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <optional>
#include <span>

#include "ringrule/growth/group_growth.h"

namespace ringrule {

/// The covariate that a curve runs along, before it is centred. `sinceDays` counts from the youngest age of the group,
/// `perDay` is k of a saturating curve.
[[nodiscard]] inline double alongCurve(AgeCurve curve, double ageDays, double sinceDays, double perDay) {
    switch (curve) {
        case AgeCurve::SquareRoot:
            return std::sqrt(ageDays);
        case AgeCurve::Logarithm:
            return std::log(ageDays);
        case AgeCurve::Saturating:
            return -std::exp(-perDay * sinceDays);
        case AgeCurve::Straight:
        case AgeCurve::Quadratic:
            return ageDays;
    }
    return ageDays;
}

/// The derivative of a saturating covariate by ln k: beside it as a fixed effect, it lets the data move k and carries
/// k's own uncertainty into every interval (one Gauss-Newton step).
[[nodiscard]] inline double saturationByRate(double sinceDays, double perDay) {
    return perDay * sinceDays * std::exp(-perDay * sinceDays);
}

/// The k that leaves the least squares about animals' own lines over −e^(−k·age), on the given scale, each value with
/// its weight on that scale. `animal` counts the animals of `lengths` from 0, in order. Nothing when no k between a
/// fifth and twelve of the time seen is best: the growth then bends too little, too sharply or the other way.
[[nodiscard]] std::optional<double> saturationPerDay(std::span<const AnimalLength> lengths, std::span<const int> animal,
                                                     LengthScale scale, std::span<const double> weights);

}  // namespace ringrule
