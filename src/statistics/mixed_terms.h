// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <Eigen/Core>
#include <vector>

#include "ringrule/statistics/mixed_model.h"

namespace ringrule {

using Matrix2X = Eigen::Matrix<double, 2, Eigen::Dynamic>;
/// As a fit keeps its matrices: row by row.
using RowsFirst = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// The data as sums of each group, all that a likelihood needs: with W the weights and Z = [1, covariate]. A model
/// without random slope has a covariate of zeros.
struct MixedSums {
    struct Group {
        Eigen::Matrix2d zWz;
        Matrix2X zWx;
        Eigen::Vector2d zWy;
    };
    std::vector<Group> groups;
    Eigen::MatrixXd xWx;
    Eigen::VectorXd xWy;
    double yWy = 0.0;
    double logWeights = 0.0;
    int rows = 0;
    bool hasSlope = false;

    [[nodiscard]] int thetas() const { return hasSlope ? 3 : 1; }
};

/// The deviance −2·logL at a θ, least over β and σ², and its derivatives in (θ, σ²) there.
struct MixedTerms {
    bool defined = false;  ///< false where the residual variance is not above zero
    double deviance = 0.0;
    double residualVariance = 0.0;
    Eigen::VectorXd beta;
    Eigen::MatrixXd betaShape;  ///< (X'H⁻¹X)⁻¹
    Eigen::VectorXd gradient;   ///< by θ, then σ²
    Eigen::MatrixXd hessian;
    std::vector<Eigen::MatrixXd> precisionByTheta;
};

/// G/σ² of a θ.
[[nodiscard]] Eigen::Matrix2d relativeCovariance(const Eigen::VectorXd& theta);
/// ∂(G/σ²)/∂θᵢ.
[[nodiscard]] Eigen::Matrix2d relativeCovarianceBy(const Eigen::VectorXd& theta, int i);

/// Deviance alone, or with derivatives. They follow from ∂V = Z·∂G·Z' with P = V⁻¹ − V⁻¹X(X'V⁻¹X)⁻¹X'V⁻¹: traces of
/// P·∂V and quadratic forms y'P·∂V·P·y, summed over groups of two random effects (Harville 1977).
[[nodiscard]] MixedTerms mixedTerms(const MixedSums& sums, const Eigen::VectorXd& theta, MixedCriterion criterion,
                                    bool withDerivatives);

/// Z'H⁻¹Z, Z'H⁻¹X and Z'H⁻¹(y − Xβ) of one group.
struct GroupProjection {
    Eigen::Matrix2d zVz;
    Matrix2X zVx;
    Eigen::Vector2d zVr;
};
[[nodiscard]] GroupProjection projected(const MixedSums::Group& group, const Eigen::Matrix2d& covariance,
                                        const Eigen::VectorXd& beta);

}  // namespace ringrule
