// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "ringrule/growth/group_growth.h"

namespace ringrule {

/// The covariate that a curve runs along, before it is centred.
[[nodiscard]] inline double alongCurve(AgeCurve curve, double ageDays) {
    switch (curve) {
        case AgeCurve::SquareRoot:
            return std::sqrt(ageDays);
        case AgeCurve::Logarithm:
            return std::log(ageDays);
        case AgeCurve::Straight:
        case AgeCurve::Quadratic:
            return ageDays;
    }
    return ageDays;
}

}  // namespace ringrule
