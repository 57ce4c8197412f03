// SPDX-License-Identifier: GPL-3.0-or-later
#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cassert>
#include <cmath>

#include "ringrule/statistics/distributions.h"
#include "ringrule/statistics/mixed_model.h"
#include "statistics/mixed_terms.h"

namespace ringrule {

namespace {

using RowView = Eigen::Map<const RowsFirst>;

/// The parts of a fit as matrices, in its own coordinates.
struct View {
    const MixedFit& fit;
    Eigen::Index p;
    RowView xTransform;
    RowView shape;
    RowView parameters;
    Eigen::VectorXd theta;
    Eigen::Matrix2d covariance;

    explicit View(const MixedFit& from)
        : fit(from),
          p(static_cast<Eigen::Index>(from.beta.size())),
          xTransform(from.basis.xTransform.data(), p, p),
          shape(from.basis.betaShape.data(), p, p),
          parameters(from.basis.parameterCovariance.data(), static_cast<Eigen::Index>(from.basis.theta.size()) + 1,
                     static_cast<Eigen::Index>(from.basis.theta.size()) + 1),
          theta(Eigen::Map<const Eigen::VectorXd>(from.basis.theta.data(),
                                                  static_cast<Eigen::Index>(from.basis.theta.size()))),
          covariance(relativeCovariance(theta)) {}

    [[nodiscard]] Eigen::VectorXd own(std::span<const double> x) const {
        assert(x.size() == fit.beta.size());
        return xTransform * Eigen::Map<const Eigen::VectorXd>(x.data(), p);
    }
    [[nodiscard]] Eigen::Vector2d z(const MixedPoint& at) const {
        const double covariate = at.slope - at.intercept * fit.basis.slopeCentre;
        return {at.intercept, fit.randomEffects() == 2 ? covariate / fit.basis.slopeUnit : 0.0};
    }
    [[nodiscard]] RowView byTheta(std::size_t i) const { return {fit.basis.precisionByTheta[i].data(), p, p}; }
};

/// A variance in units of σ², with its derivatives by θ.
struct VarianceShape {
    double value = 0.0;
    Eigen::VectorXd byTheta;
};

/// Variance of x'β and its derivatives: ∂(X'H⁻¹X)⁻¹ = C·Aᵢ·C.
VarianceShape fixedVariance(const View& view, const Eigen::VectorXd& x) {
    const Eigen::VectorXd spread = view.shape * x;
    VarianceShape result{x.dot(spread), Eigen::VectorXd::Zero(view.theta.size())};
    for (std::size_t i = 0; i < view.fit.basis.theta.size(); ++i) {
        result.byTheta[static_cast<Eigen::Index>(i)] = spread.dot(view.byTheta(i) * spread);
    }
    return result;
}

/// Prediction error variance of x'β + z'b of one group (Henderson 1975): with w = x − T'Gz,
/// w'Cw + z'(G − GSG)z, S = Z'H⁻¹Z and T = Z'H⁻¹X.
VarianceShape groupVariance(const View& view, std::size_t group, const Eigen::VectorXd& x, const Eigen::Vector2d& z) {
    const RowView s(view.fit.basis.zVz.data() + 4 * group, 2, 2);
    const RowView t(view.fit.basis.zVx.data() + 2 * group * static_cast<std::size_t>(view.p), 2, view.p);
    const Eigen::Vector2d pulled = view.covariance * z;
    const Eigen::VectorXd w = x - t.transpose() * pulled;
    const Eigen::VectorXd spread = view.shape * w;
    const Eigen::Vector2d rest = z - s * pulled;
    VarianceShape result{w.dot(spread) + pulled.dot(rest), Eigen::VectorXd::Zero(view.theta.size())};
    for (std::size_t i = 0; i < view.fit.basis.theta.size(); ++i) {
        const Eigen::Vector2d moved = relativeCovarianceBy(view.theta, static_cast<int>(i)) * rest;
        result.byTheta[static_cast<Eigen::Index>(i)] =
            spread.dot(view.byTheta(i) * spread) - 2.0 * (t * spread).dot(moved) + rest.dot(moved);
    }
    return result;
}

/// Degrees of freedom 2·v²/(g'Ag) of a variance v = σ²·shape with gradient g in (θ, σ²) (Satterthwaite 1946).
double degreesOfFreedom(const View& view, const VarianceShape& shape) {
    const double sigma2 = view.fit.basis.residualVariance;
    Eigen::VectorXd gradient(view.theta.size() + 1);
    gradient << sigma2 * shape.byTheta, shape.value;
    const double variance = sigma2 * shape.value;
    // Where the spread is all but unknown they come out near nothing: at a tenth the interval is endless for any use, and
    // Student's quantile is still a number.
    constexpr double kLeast = 0.1;
    return std::max(kLeast, 2.0 * variance * variance / gradient.dot(view.parameters * gradient));
}

MixedEstimate estimate(const View& view, double value, const VarianceShape& shape, double freedom) {
    MixedEstimate result;
    result.value = value;
    result.standardError = view.fit.basis.yUnit * std::sqrt(view.fit.basis.residualVariance * shape.value);
    result.degreesOfFreedom = freedom;
    const double half = studentQuantile(0.975, result.degreesOfFreedom) * result.standardError;
    result.lower95 = value - half;
    result.upper95 = value + half;
    return result;
}

MixedEstimate estimate(const View& view, double value, const VarianceShape& shape) {
    return estimate(view, value, shape, degreesOfFreedom(view, shape));
}

double fixedValue(const MixedFit& fit, std::span<const double> x) {
    double value = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        value += x[i] * fit.beta[i];
    }
    return value;
}

/// Denominator degrees of freedom of an F made of t's with these (Fai & Cornelius 1996).
double pooledFreedom(const std::vector<double>& each) {
    double expected = 0.0;
    for (double df : each) {
        if (df <= 2.0) {
            return 2.0;
        }
        expected += df / (df - 2.0);
    }
    const auto q = static_cast<double>(each.size());
    return each.size() == 1 ? each.front() : 2.0 * expected / (expected - q);
}

}  // namespace

double MixedEstimate::pTwoSided() const {
    return studentTwoSided(t(), degreesOfFreedom);
}

MixedEstimate contrast(const MixedFit& fit, std::span<const double> weights) {
    const View view(fit);
    return estimate(view, fixedValue(fit, weights), fixedVariance(view, view.own(weights)));
}

MixedFTest jointTest(const MixedFit& fit, const std::vector<std::vector<double>>& rows) {
    const View view(fit);
    const auto q = static_cast<Eigen::Index>(rows.size());
    Eigen::MatrixXd own(q, view.p);
    Eigen::VectorXd values(q);
    for (Eigen::Index row = 0; row < q; ++row) {
        const auto& weights = rows[static_cast<std::size_t>(row)];
        own.row(row) = view.own(weights).transpose();
        values[row] = fixedValue(fit, weights) / fit.basis.yUnit;
    }
    const Eigen::MatrixXd covariance = fit.basis.residualVariance * own * view.shape * own.transpose();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(covariance);
    MixedFTest result;
    result.numerator = static_cast<double>(q);
    std::vector<double> each;
    for (Eigen::Index i = 0; i < q; ++i) {
        const Eigen::VectorXd direction = solver.eigenvectors().col(i);
        const double value = direction.dot(values);
        result.f += value * value / solver.eigenvalues()[i] / result.numerator;
        each.push_back(degreesOfFreedom(view, fixedVariance(view, own.transpose() * direction)));
    }
    result.denominator = pooledFreedom(each);
    result.p = 1.0 - fisherCdf(result.f, result.numerator, result.denominator);
    return result;
}

MixedEstimate predictMean(const MixedFit& fit, const MixedPoint& at) {
    return contrast(fit, at.x);
}

MixedEstimate predictNewGroup(const MixedFit& fit, const MixedPoint& at, double errorVariance) {
    const View view(fit);
    const Eigen::Vector2d z = view.z(at);
    VarianceShape shape = fixedVariance(view, view.own(at.x));
    const double ofMean = degreesOfFreedom(view, shape);
    shape.value += z.dot(view.covariance * z) + errorVariance;
    for (Eigen::Index i = 0; i < view.theta.size(); ++i) {
        shape.byTheta[i] += z.dot(relativeCovarianceBy(view.theta, static_cast<int>(i)) * z);
    }
    // Satterthwaite's degrees of freedom are estimated as well: where the spread between groups happens to come out
    // small they grow, just when the interval is too narrow. Those of the mean hold the groups alone.
    return estimate(view, fixedValue(fit, at.x), shape, std::min(ofMean, degreesOfFreedom(view, shape)));
}

MixedEstimate predictGroup(const MixedFit& fit, std::size_t group, const MixedPoint& at, double errorVariance) {
    assert(group < static_cast<std::size_t>(fit.groups));
    const View view(fit);
    const Eigen::Vector2d z = view.z(at);
    VarianceShape shape = groupVariance(view, group, view.own(at.x), z);
    shape.value += errorVariance;
    const double effect = z[0] * fit.basis.effects[2 * group] + z[1] * fit.basis.effects[2 * group + 1];
    return estimate(view, fixedValue(fit, at.x) + fit.basis.yUnit * effect, shape);
}

}  // namespace ringrule
