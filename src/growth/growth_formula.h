// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "ringrule/growth/model.h"

namespace ringrule {

/// Length at an age for doubles and jets alike; `p` holds the model's parameters.
template <class T, class Parameters>
[[nodiscard]] T growthFormula(GrowthModel model, const Parameters& p, const T& ageDays) {
    using std::exp;
    switch (model) {
        case GrowthModel::Linear:
            return p[0] + p[1] * ageDays;
        case GrowthModel::Exponential:
            return p[0] * exp(p[1] * ageDays);
        case GrowthModel::VonBertalanffy:
            return p[0] * (1.0 - exp(-p[1] * (ageDays - p[2])));
        case GrowthModel::Gompertz:
            return p[0] * exp(-p[1] * exp(-p[2] * ageDays));
        case GrowthModel::Logistic:
            return p[0] / (1.0 + exp(-p[1] * (ageDays - p[2])));
    }
    return T(0.0);
}

}  // namespace ringrule
