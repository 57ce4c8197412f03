// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/mixed_model.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <Eigen/QR>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

#include "statistics/mixed_search.h"
#include "statistics/mixed_terms.h"

namespace ringrule {

namespace {

std::vector<double> flattened(const Eigen::MatrixXd& matrix) {
    const RowsFirst rows = matrix;
    return {rows.data(), rows.data() + rows.size()};
}

/// Why the data cannot carry the model, before any computing.
std::optional<Refusal> unfit(const MixedData& data, std::size_t columns) {
    const auto groups = data.group.empty() ? 0 : *std::max_element(data.group.begin(), data.group.end()) + 1;
    if (groups < 2 || data.y.size() <= columns) {
        return Refusal{"too-few-groups", "There are too few animals or lengths for a model of the group; add animals."};
    }
    std::vector<int> counts(static_cast<std::size_t>(groups), 0);
    std::vector<double> first(static_cast<std::size_t>(groups), 0.0);
    bool varies = data.slope.empty();
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        const auto g = static_cast<std::size_t>(data.group[row]);
        if (counts[g]++ == 0 && !data.slope.empty()) {
            first[g] = data.slope[row];
        }
        varies = varies || data.slope[row] != first[g];
    }
    const int effects = data.slope.empty() ? 1 : 2;
    if (*std::max_element(counts.begin(), counts.end()) <= effects) {
        return Refusal{"no-repeats",
                       "No animal was seen often enough to tell its own growth from scatter; add sessions."};
    }
    if (!varies) {
        return Refusal{"not-identified", "Every animal was seen at one age only; add sessions at other ages."};
    }
    return std::nullopt;
}

/// The data in the fit's own coordinates.
struct Prepared {
    MixedSums sums;
    Eigen::MatrixXd xTransform;  ///< own x = xTransform · x
    double logDetX = 0.0;        ///< ln of the determinant of the map back
    double slopeCentre = 0.0;
    double slopeUnit = 1.0;
    double yUnit = 1.0;
    Eigen::VectorXd startBeta;  ///< taken off y beforehand, in own coordinates
};

void centreSlope(const MixedData& data, Prepared& result) {
    if (data.slope.empty()) {
        return;
    }
    const auto n = static_cast<double>(data.slope.size());
    result.slopeCentre = std::accumulate(data.slope.begin(), data.slope.end(), 0.0) / n;
    double squares = 0.0;
    for (double value : data.slope) {
        squares += (value - result.slopeCentre) * (value - result.slopeCentre);
    }
    result.slopeUnit = std::sqrt(squares / n);
}

void sumGroups(const MixedData& data, const Eigen::MatrixXd& x, const Eigen::VectorXd& y, Prepared& result) {
    MixedSums& sums = result.sums;
    const Eigen::Index p = x.cols();
    const int groups = *std::max_element(data.group.begin(), data.group.end()) + 1;
    sums.groups.assign(static_cast<std::size_t>(groups),
                       {Eigen::Matrix2d::Zero(), Matrix2X::Zero(2, p), Eigen::Vector2d::Zero()});
    sums.xWx = Eigen::MatrixXd::Zero(p, p);
    sums.xWy = Eigen::VectorXd::Zero(p);
    sums.rows = static_cast<int>(data.y.size());
    sums.hasSlope = !data.slope.empty();
    for (std::size_t row = 0; row < data.y.size(); ++row) {
        const auto i = static_cast<Eigen::Index>(row);
        const double weight = data.weights.empty() ? 1.0 : data.weights[row];
        const double covariate = sums.hasSlope ? (data.slope[row] - result.slopeCentre) / result.slopeUnit : 0.0;
        const Eigen::Vector2d z(1.0, covariate);
        MixedSums::Group& group = sums.groups[static_cast<std::size_t>(data.group[row])];
        group.zWz.noalias() += weight * z * z.transpose();
        group.zWx.noalias() += weight * z * x.row(i);
        group.zWy += weight * y[i] * z;
        sums.xWx.noalias() += weight * x.row(i).transpose() * x.row(i);
        sums.xWy += weight * y[i] * x.row(i).transpose();
        sums.yWy += weight * y[i] * y[i];
        sums.logWeights += std::log(weight);
    }
}

/// Orthonormal X, centred covariate, y less its least-squares fit in units of what is left: digits are then lost to
/// neither units nor origin. Nothing when columns of X depend on each other, or y has no scatter about X.
std::optional<Prepared> prepared(const MixedData& data, std::size_t columns, bool& exact) {
    const auto n = static_cast<Eigen::Index>(data.y.size());
    const auto p = static_cast<Eigen::Index>(columns);
    const Eigen::Map<const RowsFirst> x(data.x.data(), n, p);
    const Eigen::Map<const Eigen::VectorXd> y(data.y.data(), n);
    Eigen::VectorXd root = Eigen::VectorXd::Ones(n);
    for (std::size_t row = 0; row < data.weights.size(); ++row) {
        root[static_cast<Eigen::Index>(row)] = std::sqrt(data.weights[row]);
    }
    const Eigen::MatrixXd weighted = root.asDiagonal() * x;
    const Eigen::VectorXd unit = weighted.colwise().norm().transpose();
    if (!(unit.minCoeff() > 0.0)) {
        return std::nullopt;
    }
    const Eigen::MatrixXd scaledColumns = weighted * unit.cwiseInverse().asDiagonal();
    if (Eigen::ColPivHouseholderQR<Eigen::MatrixXd> pivoted(scaledColumns); pivoted.setThreshold(1e-10).rank() < p) {
        return std::nullopt;
    }
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(scaledColumns);
    const Eigen::MatrixXd upper =
        Eigen::MatrixXd(qr.matrixQR().topRows(p).triangularView<Eigen::Upper>()) * unit.asDiagonal();
    Prepared result;
    result.xTransform = upper.transpose().triangularView<Eigen::Lower>().solve(Eigen::MatrixXd::Identity(p, p));
    result.logDetX = upper.diagonal().cwiseAbs().array().log().sum();
    const Eigen::MatrixXd own = x * result.xTransform.transpose();
    const Eigen::VectorXd weightedY = root.cwiseProduct(y);
    result.startBeta = (root.asDiagonal() * own).transpose() * weightedY;
    Eigen::VectorXd rest = y - own * result.startBeta;
    const Eigen::VectorXd weightedRest = root.cwiseProduct(rest);
    result.yUnit = std::sqrt(weightedRest.squaredNorm() / static_cast<double>(n));
    exact = !(result.yUnit * std::sqrt(static_cast<double>(n)) > 1e-12 * weightedY.norm());
    if (exact) {
        return std::nullopt;
    }
    rest /= result.yUnit;
    centreSlope(data, result);
    sumGroups(data, own, rest, result);
    return result;
}

/// Twice the inverse of the Hessian, over the directions in which the deviance bends (others are on a boundary).
Eigen::MatrixXd parameterCovariance(const Eigen::MatrixXd& hessian) {
    const Eigen::VectorXd unit = hessian.diagonal().cwiseAbs().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
    const Eigen::MatrixXd scaledHessian = unit.asDiagonal() * hessian * unit.asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(scaledHessian);
    Eigen::MatrixXd result = Eigen::MatrixXd::Zero(hessian.rows(), hessian.cols());
    for (Eigen::Index i = 0; i < hessian.rows(); ++i) {
        if (solver.eigenvalues()[i] > 1e-8) {
            const Eigen::VectorXd v = unit.asDiagonal() * solver.eigenvectors().col(i);
            result += 2.0 / solver.eigenvalues()[i] * v * v.transpose();
        }
    }
    return result;
}

/// From the fit's coordinates of [intercept, slope] to those of the caller.
Eigen::Matrix2d backToCaller(const Prepared& prepared) {
    Eigen::Matrix2d back;
    back << 1.0, -prepared.slopeCentre / prepared.slopeUnit, 0.0, 1.0 / prepared.slopeUnit;
    return prepared.yUnit * back;
}

void fillBasis(const Prepared& prepared, const MixedOptimum& best, MixedFit& fit) {
    MixedFit::Basis& basis = fit.basis;
    basis.xTransform = flattened(prepared.xTransform);
    basis.slopeCentre = prepared.slopeCentre;
    basis.slopeUnit = prepared.slopeUnit;
    basis.yUnit = prepared.yUnit;
    basis.residualVariance = best.terms.residualVariance;
    basis.theta.assign(best.theta.data(), best.theta.data() + best.theta.size());
    basis.betaShape = flattened(best.terms.betaShape);
    for (const Eigen::MatrixXd& one : best.terms.precisionByTheta) {
        basis.precisionByTheta.push_back(flattened(one));
    }
    basis.parameterCovariance = flattened(parameterCovariance(best.terms.hessian));
    const Eigen::Matrix2d covariance = relativeCovariance(best.theta);
    const Eigen::Matrix2d back = backToCaller(prepared);
    for (const MixedSums::Group& group : prepared.sums.groups) {
        const GroupProjection projection = projected(group, covariance, best.terms.beta);
        const auto zVz = flattened(projection.zVz);
        const auto zVx = flattened(projection.zVx);
        const Eigen::Vector2d effect = covariance * projection.zVr;
        const Eigen::Vector2d told = back * effect;
        basis.zVz.insert(basis.zVz.end(), zVz.begin(), zVz.end());
        basis.zVx.insert(basis.zVx.end(), zVx.begin(), zVx.end());
        basis.effects.insert(basis.effects.end(), {effect[0], effect[1]});
        fit.groupEffects.push_back(fit.randomEffects() == 2 ? std::vector{told[0], told[1]} : std::vector{told[0]});
    }
}

MixedFit described(const Prepared& prepared, const MixedOptimum& best, MixedCriterion criterion) {
    MixedFit fit;
    fit.criterion = criterion;
    fit.observations = prepared.sums.rows;
    fit.groups = static_cast<int>(prepared.sums.groups.size());
    fit.boundary = best.boundary;
    const Eigen::VectorXd beta =
        prepared.xTransform.transpose() * (prepared.startBeta + prepared.yUnit * best.terms.beta);
    fit.beta.assign(beta.data(), beta.data() + beta.size());
    const double variance = best.terms.residualVariance * prepared.yUnit * prepared.yUnit;
    fit.residualSd = std::sqrt(variance);
    fit.betaCovariance =
        flattened(variance * prepared.xTransform.transpose() * best.terms.betaShape * prepared.xTransform);
    fillBasis(prepared, best, fit);
    const Eigen::Matrix2d back = backToCaller(prepared);
    const Eigen::Matrix2d random =
        best.terms.residualVariance * back * relativeCovariance(best.theta) * back.transpose();
    fit.randomCovariance = fit.randomEffects() == 2 ? flattened(random) : std::vector{random(0, 0)};
    double deviance = best.terms.deviance;
    const bool restricted = criterion == MixedCriterion::RestrictedLikelihood;
    deviance +=
        2.0 * (fit.observations - (restricted ? static_cast<double>(beta.size()) : 0.0)) * std::log(prepared.yUnit);
    deviance += restricted ? 2.0 * prepared.logDetX : 0.0;
    fit.logLikelihood = -0.5 * deviance;
    return fit;
}

}  // namespace

double MixedFit::interceptSd() const {
    return std::sqrt(randomCovariance.front());
}

double MixedFit::slopeSd() const {
    return randomEffects() == 2 ? std::sqrt(randomCovariance[3]) : 0.0;
}

double MixedFit::correlation() const {
    const double product = interceptSd() * slopeSd();
    return product > 0.0 ? randomCovariance[1] / product : std::numeric_limits<double>::quiet_NaN();
}

namespace {

Refusal noScatter() {
    return {"no-scatter", "The lengths follow the model exactly; real ones scatter. Check the data."};
}

Outcome<Prepared> ready(const MixedData& data) {
    const std::size_t columns = data.y.empty() ? 0 : data.x.size() / data.y.size();
    assert(data.x.size() == columns * data.y.size() && data.group.size() == data.y.size());
    assert(data.slope.empty() || data.slope.size() == data.y.size());
    assert(data.weights.empty() || data.weights.size() == data.y.size());
    if (const auto refusal = unfit(data, columns)) {
        return *refusal;
    }
    bool exact = false;
    auto result = prepared(data, columns, exact);
    if (!result) {
        return exact ? noScatter()
                     : Refusal{"not-identified", "The data do not tell the parts of the model apart; add sessions."};
    }
    return std::move(*result);
}

/// Degrees of freedom of the scatter about each group's own line: a line takes two values (one of a group seen once),
/// and of the fixed effects those count that lines do not hold already.
double freedomWithin(const MixedSums& sums) {
    double freedom = sums.rows;
    Eigen::MatrixXd rest = sums.xWx;  // of orthonormal columns, so that its eigenvalues lie between 0 and 1
    for (const MixedSums::Group& group : sums.groups) {
        const bool line = group.zWz.determinant() > 1e-10 * group.zWz(0, 0) * group.zWz(0, 0);
        freedom -= line ? 2.0 : 1.0;
        if (line) {
            rest -= group.zWx.transpose() * group.zWz.inverse() * group.zWx;
        } else {
            rest -= group.zWx.row(0).transpose() * group.zWx.row(0) / group.zWz(0, 0);
        }
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(rest, Eigen::EigenvaluesOnly);
    return freedom - static_cast<double>((solver.eigenvalues().array() > 1e-8).count());
}

}  // namespace

Outcome<MixedFit> fitMixed(const MixedData& data, MixedCriterion criterion) {
    const auto from = ready(data);
    if (!from) {
        return from.refusal();
    }
    const MixedOptimum best = searchMixed(from.value().sums, criterion);
    if (best.runaway) {
        return noScatter();
    }
    if (best.flat) {
        return Refusal{"not-identified", "The data do not tell animals from scatter; add animals and sessions."};
    }
    return described(from.value(), best, criterion);
}

Outcome<MixedFit> fitOwnEffects(const MixedData& data) {
    assert(!data.slope.empty());
    const auto from = ready(data);
    if (!from) {
        return from.refusal();
    }
    // A spread between groups of ten thousand residual deviations draws nobody to the mean.
    constexpr double kWide = 1e4;
    MixedOptimum wide;
    wide.theta = Eigen::Vector3d(kWide, 0.0, kWide);
    wide.terms = mixedTerms(from.value().sums, wide.theta, MixedCriterion::RestrictedLikelihood, true);
    const double freedom = freedomWithin(from.value().sums);
    if (!wide.terms.defined || freedom < 1.0) {
        return Refusal{"no-repeats",
                       "No animal was seen often enough to tell its own growth from scatter; add sessions."};
    }
    const double counted = from.value().sums.rows - static_cast<double>(wide.terms.beta.size());
    wide.terms.residualVariance *= counted / freedom;
    MixedFit fit = described(from.value(), wide, MixedCriterion::RestrictedLikelihood);
    Eigen::Matrix4d onlyScatter = Eigen::Matrix4d::Zero();
    onlyScatter(3, 3) = 2.0 * wide.terms.residualVariance * wide.terms.residualVariance / freedom;
    fit.basis.parameterCovariance = flattened(onlyScatter);
    return fit;
}

double mixedAicc(const MixedFit& fit) {
    const double n = fit.observations;
    const double k = static_cast<double>(fit.beta.size() + fit.basis.theta.size()) + 1.0;
    if (n <= k + 1.0) {
        return std::numeric_limits<double>::infinity();
    }
    return -2.0 * fit.logLikelihood + 2.0 * k + 2.0 * k * (k + 1.0) / (n - k - 1.0);
}

}  // namespace ringrule
