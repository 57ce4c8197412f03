// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <ceres/jet.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "ringrule/statistics/least_squares.h"

namespace ringrule {

/// A number with its derivatives by N parameters; what a formula gets in place of doubles.
template <int N>
using Dual = ceres::Jet<double, N>;

/// A residual model from a formula of N parameters, with exact derivatives by forward differentiation. `formula` takes
/// a `std::array<T, N>` of any scalar T and returns the residuals as `std::vector<T>`; call `exp`, `log`, `pow`
/// unqualified after `using std::exp;` so that both doubles and jets find theirs.
template <int N, class Formula>
[[nodiscard]] ResidualModel differentiated(Formula formula) {
    return [formula = std::move(formula)](const Eigen::VectorXd& parameters) -> std::optional<Linearised> {
        using Jet = Dual<N>;
        std::array<Jet, static_cast<std::size_t>(N)> at;
        for (int i = 0; i < N; ++i) {
            at[static_cast<std::size_t>(i)] = Jet(parameters[i], i);
        }
        const std::vector<Jet> residuals = formula(at);
        Linearised result;
        const auto rows = static_cast<Eigen::Index>(residuals.size());
        result.residuals.resize(rows);
        result.jacobian.resize(rows, N);
        for (Eigen::Index row = 0; row < rows; ++row) {
            const Jet& one = residuals[static_cast<std::size_t>(row)];
            result.residuals[row] = one.a;
            result.jacobian.row(row) = one.v.transpose();
        }
        if (!result.residuals.allFinite() || !result.jacobian.allFinite()) {
            return std::nullopt;
        }
        return result;
    };
}

}  // namespace ringrule
