// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>
#include <optional>

#include "statistics/mixed_terms.h"

namespace ringrule {

/// θ of least deviance.
struct MixedOptimum {
    Eigen::VectorXd theta;
    MixedTerms terms;       ///< with derivatives
    bool boundary = false;  ///< the Cholesky factor has a zero on its diagonal
    bool runaway = false;   ///< the residual variance goes to zero: the values follow the model exactly
    bool flat = false;      ///< a direction of θ does not change the deviance
};

/// Newton steps with exact derivatives from the best points of a grid. The deviance does not depend on the signs of the
/// factor's columns, so that the search is free and a boundary is an ordinary minimum at zero.
[[nodiscard]] MixedOptimum searchMixed(const MixedSums& sums, MixedCriterion criterion);

}  // namespace ringrule
