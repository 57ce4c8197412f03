// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>
#include <functional>
#include <optional>
#include <vector>

#include "ringrule/outcome.h"

namespace ringrule {

/// Residuals at some parameters, with their derivatives: one row a residual, one column a parameter.
struct Linearised {
    Eigen::VectorXd residuals;
    Eigen::MatrixXd jacobian;
};

/// The residuals of a model at given parameters, or nothing where the model is not defined. `autodiff.h` makes one from
/// a plain formula.
using ResidualModel = std::function<std::optional<Linearised>(const Eigen::VectorXd& parameters)>;

struct ParameterBounds {
    Eigen::VectorXd lower;  ///< empty: none
    Eigen::VectorXd upper;  ///< empty: none
};

struct LeastSquaresOptions {
    ParameterBounds bounds;
    int maxIterations = 500;
    double huberWidth = 0.0;       ///< residuals beyond this count linearly; 0: plain squares
    bool residualsAreSd1 = false;  ///< residuals are in units of a known standard deviation: do not rescale covariance
    /// A direction of parameter space whose scaled singular value is below this part of the largest is not identified:
    /// double precision leaves fewer than four digits of a covariance there.
    double identifiedAbove = 1e-10;
};

/// What `solveLeastSquares` found.
struct LeastSquaresFit {
    Eigen::VectorXd parameters;
    Eigen::MatrixXd covariance;  ///< of the parameters; zero rows and columns for those held at a bound
    std::vector<bool> atBound;
    double residualSumOfSquares = 0.0;
    double residualSd = 0.0;  ///< sqrt(RSS / degrees of freedom)
    int residuals = 0;
    int degreesOfFreedom = 0;  ///< residuals less free parameters
    int startUsed = -1;        ///< index of the start that gave it

    [[nodiscard]] double sd(Eigen::Index i) const;  ///< standard error of one parameter
};

/// The parameters with the least sum of squared residuals over all starts (Levenberg–Marquardt by Ceres, then
/// Gauss–Newton steps to the last digits), with covariance s²(JᵀJ)⁻¹. Refuses with "too-few-points" (no degree of
/// freedom left), "no-fit" (no start converged) or "not-identified" (the data do not tell the parameters apart).
[[nodiscard]] Outcome<LeastSquaresFit> solveLeastSquares(const ResidualModel& model,
                                                         const std::vector<Eigen::VectorXd>& starts,
                                                         const LeastSquaresOptions& options = {});

}  // namespace ringrule
