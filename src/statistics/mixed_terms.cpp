// SPDX-License-Identifier: GPL-3.0-or-later
#include "statistics/mixed_terms.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <array>
#include <cmath>
#include <numbers>

namespace ringrule {

namespace {

/// (I + K·G)⁻¹, the factor by which a group's random effects damp its sums.
Eigen::Matrix2d damping(const Eigen::Matrix2d& zWz, const Eigen::Matrix2d& covariance) {
    return (Eigen::Matrix2d::Identity() + zWz * covariance).inverse();
}

struct Solved {
    Eigen::MatrixXd precision;  ///< X'H⁻¹X
    double logDetH = 0.0;
    double quadratic = 0.0;  ///< (y − Xβ)'H⁻¹(y − Xβ)
};

Solved solveBeta(const MixedSums& sums, const Eigen::Matrix2d& covariance, MixedTerms& terms) {
    Solved solved;
    solved.precision = sums.xWx;
    Eigen::VectorXd xHy = sums.xWy;
    double yHy = sums.yWy;
    double product = 1.0;  // one logarithm for many determinants
    for (const MixedSums::Group& group : sums.groups) {
        const Eigen::Matrix2d inner = Eigen::Matrix2d::Identity() + group.zWz * covariance;
        const Eigen::Matrix2d middle = covariance * inner.inverse();
        const Matrix2X part = middle * group.zWx;
        solved.precision.noalias() -= group.zWx.transpose() * part;
        xHy.noalias() -= part.transpose() * group.zWy;
        yHy -= group.zWy.dot(middle * group.zWy);
        product *= inner.determinant();
        if (product > 1e100) {
            solved.logDetH += std::log(product);
            product = 1.0;
        }
    }
    solved.logDetH += std::log(product) - sums.logWeights;
    const Eigen::LLT<Eigen::MatrixXd> factor(solved.precision);
    terms.defined = factor.info() == Eigen::Success;
    if (!terms.defined) {
        return solved;
    }
    terms.beta = factor.solve(xHy);
    terms.betaShape = factor.solve(Eigen::MatrixXd::Identity(xHy.size(), xHy.size()));
    solved.quadratic = yHy - xHy.dot(terms.beta);
    return solved;
}

double logDeterminant(const Eigen::MatrixXd& symmetric) {
    const Eigen::LLT<Eigen::MatrixXd> factor(symmetric);
    return 2.0 * factor.matrixLLT().diagonal().array().log().sum();
}

/// Sums over groups of what the derivatives by θ are made of.
struct DerivativeSums {
    std::vector<double> trace;                             ///< tr(H⁻¹Hᵢ)
    std::vector<Eigen::MatrixXd> precision;                ///< X'H⁻¹HᵢH⁻¹X
    std::vector<double> quadratic;                         ///< r'H⁻¹HᵢH⁻¹r
    std::vector<Eigen::VectorXd> mixed;                    ///< X'H⁻¹HᵢH⁻¹r
    std::vector<std::vector<double>> traces;               ///< tr(H⁻¹HᵢH⁻¹Hⱼ)
    std::vector<std::vector<Eigen::MatrixXd>> precisions;  ///< X'H⁻¹HᵢH⁻¹HⱼH⁻¹X
    std::vector<std::vector<double>> quadratics;           ///< r'H⁻¹HᵢH⁻¹HⱼH⁻¹r
    std::vector<std::vector<double>> secondTrace;          ///< tr(P·Hᵢⱼ) without its X part
    std::vector<std::vector<Eigen::MatrixXd>> secondPrecision;
    std::vector<std::vector<double>> secondQuadratic;

    DerivativeSums(std::size_t m, Eigen::Index p)
        : trace(m, 0.0),
          precision(m, Eigen::MatrixXd::Zero(p, p)),
          quadratic(m, 0.0),
          mixed(m, Eigen::VectorXd::Zero(p)),
          traces(m, std::vector<double>(m, 0.0)),
          precisions(m, std::vector<Eigen::MatrixXd>(m, Eigen::MatrixXd::Zero(p, p))),
          quadratics(traces),
          secondTrace(traces),
          secondPrecision(precisions),
          secondQuadratic(traces) {}
};

/// ∂²(G/σ²)/∂θᵢ∂θⱼ, constants of the Cholesky factor [l₁ 0; l₂ l₃].
Eigen::Matrix2d secondCovariance(std::size_t i, std::size_t j) {
    Eigen::Matrix2d result = Eigen::Matrix2d::Zero();
    if (i == 0 && j == 0) {
        result(0, 0) = 2.0;
    } else if (i + j == 1) {
        result(0, 1) = result(1, 0) = 1.0;
    } else if (i == j) {
        result(1, 1) = 2.0;
    }
    return result;
}

void addGroup(const GroupProjection& group, const std::vector<Eigen::Matrix2d>& by, DerivativeSums& sums) {
    const Matrix2X& t = group.zVx;
    const Eigen::Vector2d& u = group.zVr;
    for (std::size_t i = 0; i < by.size(); ++i) {
        const Eigen::Matrix2d inner = by[i] * group.zVz;
        const Matrix2X dT = by[i] * t;
        const Eigen::Vector2d dU = by[i] * u;
        sums.trace[i] += inner.trace();
        sums.precision[i].noalias() += t.transpose() * dT;
        sums.quadratic[i] += u.dot(dU);
        sums.mixed[i].noalias() += t.transpose() * dU;
        for (std::size_t j = 0; j <= i; ++j) {
            const Eigen::Matrix2d both = inner * by[j];
            sums.traces[i][j] += (both * group.zVz).trace();
            sums.precisions[i][j].noalias() += t.transpose() * (both * t);
            sums.quadratics[i][j] += u.dot(both * u);
            const Eigen::Matrix2d second = secondCovariance(i, j);
            sums.secondTrace[i][j] += (second * group.zVz).trace();
            sums.secondPrecision[i][j].noalias() += t.transpose() * (second * t);
            sums.secondQuadratic[i][j] += u.dot(second * u);
        }
    }
}

/// The Hessian's entry of θᵢ and θⱼ.
double secondByTheta(const DerivativeSums& d, const Eigen::MatrixXd& c, std::size_t i, std::size_t j, double variance,
                     bool restricted) {
    double traces = d.secondTrace[i][j] - d.traces[i][j];
    if (restricted) {
        traces -= (c * d.secondPrecision[i][j]).trace();
        traces += 2.0 * (c * d.precisions[i][j]).trace() - (c * d.precision[i] * c * d.precision[j]).trace();
    }
    const double quadratic = 2.0 * (d.quadratics[i][j] - d.mixed[i].dot(c * d.mixed[j])) - d.secondQuadratic[i][j];
    return traces + quadratic / variance;
}

void addDerivatives(const MixedSums& sums, const Eigen::VectorXd& theta, bool restricted, double freedom,
                    MixedTerms& terms) {
    const auto m = static_cast<std::size_t>(theta.size());
    const Eigen::Matrix2d covariance = relativeCovariance(theta);
    std::vector<Eigen::Matrix2d> by;
    for (std::size_t i = 0; i < m; ++i) {
        by.push_back(relativeCovarianceBy(theta, static_cast<int>(i)));
    }
    DerivativeSums d(m, terms.beta.size());
    for (const MixedSums::Group& group : sums.groups) {
        addGroup(projected(group, covariance, terms.beta), by, d);
    }
    const double variance = terms.residualVariance;
    const Eigen::MatrixXd& c = terms.betaShape;
    terms.gradient = Eigen::VectorXd::Zero(theta.size() + 1);
    terms.hessian = Eigen::MatrixXd::Zero(theta.size() + 1, theta.size() + 1);
    for (std::size_t i = 0; i < m; ++i) {
        const auto row = static_cast<Eigen::Index>(i);
        const double trace = d.trace[i] - (restricted ? (c * d.precision[i]).trace() : 0.0);
        terms.gradient[row] = trace - d.quadratic[i] / variance;
        for (std::size_t j = 0; j <= i; ++j) {
            const auto column = static_cast<Eigen::Index>(j);
            terms.hessian(row, column) = secondByTheta(d, c, i, j, variance, restricted);
            terms.hessian(column, row) = terms.hessian(row, column);
        }
        terms.hessian(row, theta.size()) = terms.hessian(theta.size(), row) = d.quadratic[i] / (variance * variance);
    }
    // At the best σ² the quadratic form is freedom·σ², so that −f/σ⁴ + 2Q/σ⁶ is f/σ⁴.
    terms.hessian(theta.size(), theta.size()) = freedom / (variance * variance);
    terms.precisionByTheta = std::move(d.precision);
}

}  // namespace

Eigen::Matrix2d relativeCovariance(const Eigen::VectorXd& theta) {
    Eigen::Matrix2d factor = Eigen::Matrix2d::Zero();
    factor(0, 0) = theta[0];
    if (theta.size() == 3) {
        factor(1, 0) = theta[1];
        factor(1, 1) = theta[2];
    }
    return factor * factor.transpose();
}

Eigen::Matrix2d relativeCovarianceBy(const Eigen::VectorXd& theta, int i) {
    Eigen::Matrix2d result = Eigen::Matrix2d::Zero();
    if (i == 0) {
        result(0, 0) = 2.0 * theta[0];
        result(0, 1) = result(1, 0) = theta.size() == 3 ? theta[1] : 0.0;
    } else if (i == 1) {
        result(0, 1) = result(1, 0) = theta[0];
        result(1, 1) = 2.0 * theta[1];
    } else {
        result(1, 1) = 2.0 * theta[2];
    }
    return result;
}

GroupProjection projected(const MixedSums::Group& group, const Eigen::Matrix2d& covariance,
                          const Eigen::VectorXd& beta) {
    const Eigen::Matrix2d factor = damping(group.zWz, covariance);
    GroupProjection result;
    result.zVz = factor * group.zWz;
    result.zVx = factor * group.zWx;
    result.zVr = factor * group.zWy - result.zVx * beta;
    return result;
}

MixedTerms mixedTerms(const MixedSums& sums, const Eigen::VectorXd& theta, MixedCriterion criterion,
                      bool withDerivatives) {
    MixedTerms terms;
    const Solved solved = solveBeta(sums, relativeCovariance(theta), terms);
    // Below this part of the scatter about the fixed effects the quadratic form is rounding.
    terms.defined = terms.defined && solved.quadratic > 1e-13 * sums.yWy;
    if (!terms.defined) {
        return terms;
    }
    const bool restricted = criterion == MixedCriterion::RestrictedLikelihood;
    const double freedom = sums.rows - (restricted ? static_cast<double>(terms.beta.size()) : 0.0);
    terms.residualVariance = solved.quadratic / freedom;
    terms.deviance = freedom * (1.0 + std::log(2.0 * std::numbers::pi * terms.residualVariance)) + solved.logDetH;
    if (restricted) {
        terms.deviance += logDeterminant(solved.precision);
    }
    if (withDerivatives) {
        addDerivatives(sums, theta, restricted, freedom, terms);
    }
    return terms;
}

}  // namespace ringrule
