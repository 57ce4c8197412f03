// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/least_squares.h"

#include <ceres/ceres.h>
#include <glog/logging.h>

#include <Eigen/SVD>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

namespace ringrule {

namespace {

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

class ModelCost : public ceres::CostFunction {
public:
    ModelCost(const ResidualModel& model, int residuals, int parameters) : model_(model) {
        set_num_residuals(residuals);
        mutable_parameter_block_sizes()->push_back(parameters);
    }

    bool Evaluate(double const* const* parameters, double* residuals, double** jacobians) const override {
        const Eigen::Index count = parameter_block_sizes()[0];
        const auto at = model_(Eigen::Map<const Eigen::VectorXd>(parameters[0], count));
        if (!at) {
            return false;
        }
        Eigen::Map<Eigen::VectorXd>(residuals, num_residuals()) = at->residuals;
        if (jacobians != nullptr && jacobians[0] != nullptr) {
            Eigen::Map<RowMajor>(jacobians[0], num_residuals(), count) = at->jacobian;
        }
        return true;
    }

private:
    const ResidualModel& model_;
};

/// Each residual as its own block, so that a robust loss applies to each and not to their sum.
class OneResidual : public ceres::CostFunction {
public:
    OneResidual(const ResidualModel& model, Eigen::Index index, int parameters) : model_(model), index_(index) {
        set_num_residuals(1);
        mutable_parameter_block_sizes()->push_back(parameters);
    }

    bool Evaluate(double const* const* parameters, double* residuals, double** jacobians) const override {
        const Eigen::Index count = parameter_block_sizes()[0];
        const auto at = model_(Eigen::Map<const Eigen::VectorXd>(parameters[0], count));
        if (!at) {
            return false;
        }
        residuals[0] = at->residuals[index_];
        if (jacobians != nullptr && jacobians[0] != nullptr) {
            Eigen::Map<Eigen::RowVectorXd>(jacobians[0], count) = at->jacobian.row(index_);
        }
        return true;
    }

private:
    const ResidualModel& model_;
    Eigen::Index index_;
};

struct Candidate {
    Eigen::VectorXd parameters;
    double cost = std::numeric_limits<double>::infinity();
};

/// A way down from a start: Ceres's strategy and its first trust region radius.
struct Descent {
    ceres::TrustRegionStrategyType strategy;
    double firstRadius;
};

/// All are tried from every start, for a first step that overshoots can end on a plateau where nothing changes any more
/// (NIST's BoxBOD from its first start does so with the first way).
constexpr std::array<Descent, 3> kDescents{
    {{ceres::LEVENBERG_MARQUARDT, 1e4}, {ceres::DOGLEG, 1.0}, {ceres::LEVENBERG_MARQUARDT, 1e-4}}};

/// Ways that must have led to the same least sum of squares before later starts are left untried: two ways from each of
/// two starts can be wrong together only where all would be.
constexpr int kEnoughAgreeing = 4;

/// Keeps Ceres's own log from standard error, where it would mix with progress; its outcome is in the summary.
void quietCeres() {
    static const bool once = [] {
        FLAGS_minloglevel = google::GLOG_FATAL;
        return true;
    }();
    static_cast<void>(once);
}

ceres::Solver::Options solverOptions(const LeastSquaresOptions& options, const Descent& descent) {
    ceres::Solver::Options solver;
    solver.linear_solver_type = ceres::DENSE_QR;
    solver.max_num_iterations = options.maxIterations;
    solver.trust_region_strategy_type = descent.strategy;
    solver.initial_trust_region_radius = descent.firstRadius;
    // As tight as doubles allow: the sum of squares is flat at its minimum, so parameters lag behind it by half the
    // digits.
    solver.function_tolerance = 1e-16;
    solver.gradient_tolerance = 1e-16;
    solver.parameter_tolerance = 1e-14;
    solver.logging_type = ceres::SILENT;
    solver.num_threads = 1;
    return solver;
}

void addResiduals(ceres::Problem& problem, const ResidualModel& model, int residuals, Eigen::VectorXd& parameters,
                  const LeastSquaresOptions& options) {
    const int count = static_cast<int>(parameters.size());
    if (options.huberWidth > 0.0) {
        for (int i = 0; i < residuals; ++i) {
            problem.AddResidualBlock(new OneResidual(model, i, count), new ceres::HuberLoss(options.huberWidth),
                                     parameters.data());
        }
    } else {
        problem.AddResidualBlock(new ModelCost(model, residuals, count), nullptr, parameters.data());
    }
    for (int i = 0; i < count; ++i) {
        if (options.bounds.lower.size() > 0) {
            problem.SetParameterLowerBound(parameters.data(), i, options.bounds.lower[i]);
        }
        if (options.bounds.upper.size() > 0) {
            problem.SetParameterUpperBound(parameters.data(), i, options.bounds.upper[i]);
        }
    }
}

Candidate solveFrom(const ResidualModel& model, const Eigen::VectorXd& start, const Descent& descent,
                    const LeastSquaresOptions& options) {
    Candidate candidate;
    const auto first = model(start);
    if (!first) {
        return candidate;
    }
    candidate.parameters = start;
    ceres::Problem problem;
    addResiduals(problem, model, static_cast<int>(first->residuals.size()), candidate.parameters, options);
    ceres::Solver::Summary summary;
    ceres::Solve(solverOptions(options, descent), &problem, &summary);
    if (summary.IsSolutionUsable() && candidate.parameters.allFinite()) {
        candidate.cost = summary.final_cost;
    }
    return candidate;
}

bool closeToBound(double value, double bound) {
    return std::abs(value - bound) <= 1e-9 * std::max(1.0, std::abs(bound));
}

std::vector<bool> parametersAtBound(const Eigen::VectorXd& parameters, const ParameterBounds& bounds) {
    std::vector<bool> held(static_cast<std::size_t>(parameters.size()), false);
    for (Eigen::Index i = 0; i < parameters.size(); ++i) {
        const bool low = bounds.lower.size() > 0 && closeToBound(parameters[i], bounds.lower[i]);
        const bool high = bounds.upper.size() > 0 && closeToBound(parameters[i], bounds.upper[i]);
        held[static_cast<std::size_t>(i)] = low || high;
    }
    return held;
}

/// The Jacobian's columns of free parameters, each scaled to length one, decomposed.
struct ScaledJacobian {
    std::vector<Eigen::Index> freeColumns;
    Eigen::VectorXd scale;
    Eigen::JacobiSVD<Eigen::MatrixXd> svd;
    bool identified = false;
};

/// Whether a parameter could change by its own size and leave the residuals as they are to rounding.
bool withoutEffect(double columnNorm, double parameter, double residualNorm) {
    return !(columnNorm > 0.0) || (parameter != 0.0 && columnNorm * std::abs(parameter) < 1e-12 * residualNorm);
}

ScaledJacobian decompose(const Linearised& at, const Eigen::VectorXd& parameters, const std::vector<bool>& held,
                         double identifiedAbove) {
    const Eigen::MatrixXd& jacobian = at.jacobian;
    ScaledJacobian result;
    for (Eigen::Index i = 0; i < jacobian.cols(); ++i) {
        if (!held[static_cast<std::size_t>(i)]) {
            result.freeColumns.push_back(i);
        }
    }
    const auto count = static_cast<Eigen::Index>(result.freeColumns.size());
    if (count == 0) {
        return result;
    }
    result.scale.resize(count);
    Eigen::MatrixXd scaledColumns(jacobian.rows(), count);
    for (Eigen::Index i = 0; i < count; ++i) {
        const Eigen::Index from = result.freeColumns[static_cast<std::size_t>(i)];
        const Eigen::VectorXd column = jacobian.col(from);
        result.scale[i] = column.norm();
        if (withoutEffect(result.scale[i], parameters[from], at.residuals.norm())) {
            return result;
        }
        scaledColumns.col(i) = column / result.scale[i];
    }
    result.svd.compute(scaledColumns, Eigen::ComputeThinU | Eigen::ComputeThinV);
    const Eigen::VectorXd& singular = result.svd.singularValues();
    result.identified = singular[count - 1] > identifiedAbove * singular[0];
    return result;
}

/// Gauss–Newton steps while they lower the sum of squares or leave it the same to rounding.
void polish(const ResidualModel& model, const LeastSquaresOptions& options, Candidate& candidate) {
    if (options.huberWidth > 0.0) {
        return;
    }
    for (int round = 0; round < 5; ++round) {
        const auto here = model(candidate.parameters);
        const auto held = parametersAtBound(candidate.parameters, options.bounds);
        const ScaledJacobian scaled = decompose(*here, candidate.parameters, held, options.identifiedAbove);
        if (!scaled.identified) {
            return;
        }
        const Eigen::VectorXd step = scaled.svd.solve(-here->residuals).cwiseQuotient(scaled.scale);
        Eigen::VectorXd next = candidate.parameters;
        for (std::size_t i = 0; i < scaled.freeColumns.size(); ++i) {
            next[scaled.freeColumns[i]] += step[static_cast<Eigen::Index>(i)];
        }
        const auto there = model(next);
        const bool inside =
            (options.bounds.lower.size() == 0 || (next.array() >= options.bounds.lower.array()).all()) &&
            (options.bounds.upper.size() == 0 || (next.array() <= options.bounds.upper.array()).all());
        if (!there || !inside || there->residuals.squaredNorm() > here->residuals.squaredNorm() * (1.0 + 1e-12)) {
            return;
        }
        candidate.parameters = next;
    }
}

Outcome<LeastSquaresFit> describe(const ResidualModel& model, const Candidate& candidate, int startUsed,
                                  const LeastSquaresOptions& options) {
    const auto at = model(candidate.parameters);
    LeastSquaresFit fit;
    fit.parameters = candidate.parameters;
    fit.startUsed = startUsed;
    fit.atBound = parametersAtBound(candidate.parameters, options.bounds);
    fit.residuals = static_cast<int>(at->residuals.size());
    fit.residualSumOfSquares = at->residuals.squaredNorm();
    const ScaledJacobian scaled = decompose(*at, fit.parameters, fit.atBound, options.identifiedAbove);
    if (!scaled.identified) {
        return Refusal{"not-identified",
                       "The data do not tell the parameters of this curve apart; add observations at other ages."};
    }
    const auto freeCount = static_cast<Eigen::Index>(scaled.freeColumns.size());
    fit.degreesOfFreedom = fit.residuals - static_cast<int>(freeCount);
    fit.residualSd = std::sqrt(fit.residualSumOfSquares / fit.degreesOfFreedom);
    const double variance = options.residualsAreSd1 ? 1.0 : fit.residualSd * fit.residualSd;
    const Eigen::VectorXd inverse = scaled.svd.singularValues().cwiseAbs2().cwiseInverse();
    const Eigen::MatrixXd& v = scaled.svd.matrixV();
    const Eigen::MatrixXd unscaled = v * inverse.asDiagonal() * v.transpose();
    fit.covariance = Eigen::MatrixXd::Zero(fit.parameters.size(), fit.parameters.size());
    for (Eigen::Index i = 0; i < freeCount; ++i) {
        for (Eigen::Index j = 0; j < freeCount; ++j) {
            fit.covariance(scaled.freeColumns[static_cast<std::size_t>(i)],
                           scaled.freeColumns[static_cast<std::size_t>(j)]) =
                variance * unscaled(i, j) / (scaled.scale[i] * scaled.scale[j]);
        }
    }
    return fit;
}

}  // namespace

double LeastSquaresFit::sd(Eigen::Index i) const {
    return std::sqrt(covariance(i, i));
}

Outcome<LeastSquaresFit> solveLeastSquares(const ResidualModel& model, const std::vector<Eigen::VectorXd>& starts,
                                           const LeastSquaresOptions& options) {
    assert(!starts.empty());
    quietCeres();
    Candidate best;
    int startUsed = -1;
    int agreeing = 0;  // solutions as good as the best, the best included
    for (std::size_t i = 0; i < starts.size() && agreeing < kEnoughAgreeing; ++i) {
        const auto first = model(starts[i]);
        if (first && first->residuals.size() <= starts[i].size()) {
            return Refusal{"too-few-points", "There are too few observations for a curve of this kind; add sessions."};
        }
        for (const Descent& descent : kDescents) {
            Candidate candidate = solveFrom(model, starts[i], descent, options);
            const bool better = candidate.cost < best.cost;
            const bool same = std::abs(candidate.cost - best.cost) <= 1e-9 * best.cost;
            agreeing = same ? agreeing + 1 : (better ? 1 : agreeing);
            if (better) {
                best = std::move(candidate);
                startUsed = static_cast<int>(i);
            }
        }
    }
    if (startUsed < 0) {
        return Refusal{"no-fit", "No curve of this kind fits these observations; look at them for a wrong value."};
    }
    polish(model, options, best);
    return describe(model, best, startUsed, options);
}

}  // namespace ringrule
