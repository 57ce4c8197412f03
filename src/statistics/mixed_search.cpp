// SPDX-License-Identifier: GPL-3.0-or-later
#include "statistics/mixed_search.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace ringrule {

namespace {

constexpr int kMaxSteps = 60;
constexpr double kRunaway = 1e4;      // a spread between groups of ten thousand residual deviations
constexpr double kOnBoundary = 1e-4;  // of a residual deviation: no data tell it from zero
constexpr double kLastGain = 1e-9;    // of a deviance
constexpr double kFlat = 1e-9;        // curvature of a deviance in units of the steepest direction

struct Curvature {
    Eigen::VectorXd values;
    Eigen::MatrixXd vectors;
};

/// Eigen-decomposition of the Hessian of the deviance profiled over σ².
Curvature curvature(const MixedTerms& terms) {
    const Eigen::Index m = terms.gradient.size() - 1;
    const Eigen::VectorXd cross = terms.hessian.col(m).head(m);
    const Eigen::MatrixXd profile = terms.hessian.topLeftCorner(m, m) - cross * cross.transpose() / terms.hessian(m, m);
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(profile);
    return {solver.eigenvalues(), solver.eigenvectors()};
}

/// The Newton step, downhill in every direction, at most as long as θ doubles.
Eigen::VectorXd newtonStep(const Eigen::VectorXd& theta, const MixedTerms& terms) {
    const Curvature bend = curvature(terms);
    const Eigen::VectorXd slope = bend.vectors.transpose() * terms.gradient.head(theta.size());
    const double floor = 1e-8 * bend.values.cwiseAbs().maxCoeff() + 1e-300;
    Eigen::VectorXd step = Eigen::VectorXd::Zero(theta.size());
    for (Eigen::Index i = 0; i < theta.size(); ++i) {
        step -= bend.vectors.col(i) * (slope[i] / std::max(std::abs(bend.values[i]), floor));
    }
    const double longest = 0.5 + theta.norm();
    return step.norm() > longest ? Eigen::VectorXd(step * (longest / step.norm())) : step;
}

/// Away from a saddle (an even function has one wherever a column of the factor is zero), or nothing at a minimum.
Eigen::VectorXd offSaddle(const Eigen::VectorXd& theta, const MixedTerms& terms) {
    const Curvature bend = curvature(terms);
    Eigen::Index lowest = 0;
    const double least = bend.values.minCoeff(&lowest);
    if (least >= -1e-6 * bend.values.cwiseAbs().maxCoeff()) {
        return {};
    }
    return theta + 0.1 * (1.0 + theta.norm()) * bend.vectors.col(lowest);
}

struct ThetaDescent {
    Eigen::VectorXd theta;
    MixedTerms terms;
};

/// One step with halving; false when nothing is gained any more.
bool descend(const MixedSums& sums, MixedCriterion criterion, ThetaDescent& at) {
    const Eigen::VectorXd step = newtonStep(at.theta, at.terms);
    const double promised = -at.terms.gradient.head(step.size()).dot(step);
    // Newton steps square their error: the last one gains less than the deviance can show, but still brings digits of
    // θ.
    const bool last = promised < kLastGain;
    for (double part = 1.0; part > 1e-6; part *= 0.5) {
        const Eigen::VectorXd theta = at.theta + part * step;
        const MixedTerms next = mixedTerms(sums, theta, criterion, false);
        if (next.defined && (last || next.deviance < at.terms.deviance)) {
            at = {theta, mixedTerms(sums, theta, criterion, true)};
            return !last;
        }
    }
    return false;
}

ThetaDescent minimised(const MixedSums& sums, MixedCriterion criterion, const Eigen::VectorXd& start) {
    ThetaDescent at{start, mixedTerms(sums, start, criterion, true)};
    if (!at.terms.defined) {
        return at;
    }
    for (int steps = 0; steps < kMaxSteps && at.theta.cwiseAbs().maxCoeff() < kRunaway; ++steps) {
        if (descend(sums, criterion, at)) {
            continue;
        }
        const Eigen::VectorXd aside = offSaddle(at.theta, at.terms);
        MixedTerms beside = aside.size() > 0 ? mixedTerms(sums, aside, criterion, true) : MixedTerms{};
        if (!beside.defined || beside.deviance >= at.terms.deviance) {
            break;
        }
        at = {aside, std::move(beside)};
    }
    return at;
}

/// The two best points of a grid, in units of the residual deviation.
std::vector<Eigen::VectorXd> startsOf(const MixedSums& sums, MixedCriterion criterion) {
    constexpr std::array kGrid{0.1, 0.6, 3.0, 20.0, 200.0};
    std::vector<std::pair<double, Eigen::VectorXd>> seen;
    for (double intercept : kGrid) {
        for (double slope : kGrid) {
            Eigen::VectorXd theta = Eigen::VectorXd::Zero(sums.thetas());
            theta[0] = intercept;
            if (sums.hasSlope) {
                theta[2] = slope;
            } else if (slope != kGrid.front()) {
                break;
            }
            const MixedTerms terms = mixedTerms(sums, theta, criterion, false);
            if (terms.defined) {
                seen.emplace_back(terms.deviance, theta);
            }
        }
    }
    std::sort(seen.begin(), seen.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Eigen::VectorXd> starts;
    for (std::size_t i = 0; i < std::min<std::size_t>(2, seen.size()); ++i) {
        starts.push_back(seen[i].second);
    }
    return starts;
}

/// Signs as a Cholesky factor has them; a diagonal that no data tell from zero becomes zero.
void settle(const MixedSums& sums, MixedCriterion criterion, ThetaDescent& at, bool& boundary) {
    Eigen::VectorXd theta = at.theta;
    const bool slope = theta.size() == 3;
    if (theta[0] < 0.0) {
        theta[0] = -theta[0];
        if (slope) {
            theta[1] = -theta[1];
        }
    }
    if (slope) {
        theta[2] = std::abs(theta[2]);
    }
    for (Eigen::Index i : {Eigen::Index{0}, Eigen::Index{2}}) {
        if (i < theta.size() && theta[i] < kOnBoundary) {
            theta[i] = 0.0;
            boundary = true;
        }
    }
    at.theta = theta;
    at.terms = mixedTerms(sums, theta, criterion, true);
}

}  // namespace

MixedOptimum searchMixed(const MixedSums& sums, MixedCriterion criterion) {
    MixedOptimum best;
    const auto starts = startsOf(sums, criterion);
    best.runaway = starts.empty();
    for (const Eigen::VectorXd& start : starts) {
        ThetaDescent found = minimised(sums, criterion, start);
        if (!best.terms.defined || (found.terms.defined && found.terms.deviance < best.terms.deviance)) {
            best.theta = found.theta;
            best.terms = std::move(found.terms);
        }
    }
    best.runaway = best.runaway || !best.terms.defined || best.theta.cwiseAbs().maxCoeff() >= kRunaway;
    if (best.runaway) {
        return best;
    }
    ThetaDescent at{best.theta, std::move(best.terms)};
    settle(sums, criterion, at, best.boundary);
    best.theta = at.theta;
    best.terms = std::move(at.terms);
    if (!best.terms.defined) {
        best.flat = true;  // on the boundary the fixed effects are not told apart any more
        return best;
    }
    if (!best.boundary) {
        const Eigen::VectorXd bend = curvature(best.terms).values;
        best.flat = bend.minCoeff() < kFlat * std::max(1.0, bend.maxCoeff()) && best.theta.minCoeff() > kOnBoundary;
    }
    return best;
}

}  // namespace ringrule
