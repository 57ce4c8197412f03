// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/growth/fit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "growth/growth_formula.h"
#include "growth/growth_starts.h"
#include "ringrule/statistics/autodiff.h"
#include "ringrule/statistics/distributions.h"

namespace ringrule {

namespace {

template <int N>
ResidualModel residualModel(std::vector<GrowthPoint> points, GrowthModel model) {
    return differentiated<N>([points = std::move(points), model](const auto& p) {
        using T = std::decay_t<decltype(p[0])>;
        std::vector<T> residuals;
        residuals.reserve(points.size());
        for (const GrowthPoint& point : points) {
            const T expected = growthFormula(model, p, T(point.ageDays));
            residuals.push_back(std::sqrt(point.weight) * (expected - point.lengthMm));
        }
        return residuals;
    });
}

std::size_t differentAges(std::span<const GrowthPoint> points) {
    std::set<double> ages;
    for (const GrowthPoint& point : points) {
        ages.insert(point.ageDays);
    }
    return ages.size();
}

/// Von Bertalanffy with t0 held: two parameters, put back among three afterwards.
ResidualModel heldT0Model(std::vector<GrowthPoint> points, double t0Days) {
    return differentiated<2>([points = std::move(points), t0Days](const auto& p) {
        using T = std::decay_t<decltype(p[0])>;
        const std::array<T, 3> all{p[0], p[1], T(t0Days)};
        std::vector<T> residuals;
        for (const GrowthPoint& point : points) {
            const T expected = growthFormula(GrowthModel::VonBertalanffy, all, T(point.ageDays));
            residuals.push_back(std::sqrt(point.weight) * (expected - point.lengthMm));
        }
        return residuals;
    });
}

double akaike(double rss, int points, int parameters) {
    const double n = points;
    const double k = parameters + 1.0;
    if (n - k - 1.0 <= 0.0) {
        return std::numeric_limits<double>::infinity();
    }
    constexpr double kExactMm = 1e-9;  // an exact fit has no likelihood; nobody measures a nanometre
    return n * std::log(std::max(rss / n, kExactMm * kExactMm)) + 2.0 * k + 2.0 * k * (k + 1.0) / (n - k - 1.0);
}

Eigen::VectorXd gradientAt(const GrowthFit& fit, double ageDays) {
    std::vector<Dual<3>> p;
    for (std::size_t i = 0; i < fit.parameters.size(); ++i) {
        p.emplace_back(fit.parameters[i], static_cast<int>(i));
    }
    const Dual<3> length = growthFormula(fit.model, p, Dual<3>(ageDays));
    return length.v.head(static_cast<Eigen::Index>(p.size()));
}

GrowthFit described(const LeastSquaresFit& solved, GrowthModel model, std::span<const GrowthPoint> points) {
    GrowthFit fit;
    fit.model = model;
    fit.parameters.assign(solved.parameters.begin(), solved.parameters.end());
    fit.covariance = solved.covariance;
    fit.residualSdMm = solved.residualSd;
    fit.residualSumOfSquares = solved.residualSumOfSquares;
    fit.points = static_cast<int>(points.size());
    fit.degreesOfFreedom = solved.degreesOfFreedom;
    fit.aicc = akaike(solved.residualSumOfSquares, fit.points, fit.points - solved.degreesOfFreedom);
    const auto [young, old] = std::minmax_element(points.begin(), points.end(),
                                                  [](const auto& a, const auto& b) { return a.ageDays < b.ageDays; });
    fit.youngestDays = young->ageDays;
    fit.oldestDays = old->ageDays;
    return fit;
}

Outcome<LeastSquaresFit> solveHeldT0(std::span<const GrowthPoint> points, double t0Days) {
    std::vector<Eigen::VectorXd> starts;
    for (const Eigen::VectorXd& start : growthStarts(points, GrowthModel::VonBertalanffy)) {
        starts.emplace_back(start.head(2));
    }
    const auto solved = solveLeastSquares(heldT0Model({points.begin(), points.end()}, t0Days), starts);
    if (!solved) {
        return solved;
    }
    LeastSquaresFit all = solved.value();
    all.parameters.conservativeResize(3);
    all.parameters[2] = t0Days;
    all.covariance = Eigen::MatrixXd::Zero(3, 3);
    all.covariance.topLeftCorner(2, 2) = solved.value().covariance;
    return all;
}

}  // namespace

double GrowthFit::lengthAtDays(double ageDays) const {
    return lengthAt(model, parameters, ageDays);
}

Estimate GrowthFit::meanAt(double ageDays) const {
    const Eigen::VectorXd gradient = gradientAt(*this, ageDays);
    return {lengthAtDays(ageDays), std::sqrt(gradient.dot(covariance * gradient)), 0.0};
}

Estimate GrowthFit::newAnimalAt(double ageDays) const {
    Estimate result = meanAt(ageDays);
    result.sdRandom = std::hypot(result.sdRandom, residualSdMm);
    return result;
}

double GrowthFit::meanBandMm(double ageDays) const {
    return studentQuantile(0.975, degreesOfFreedom) * meanAt(ageDays).sdRandom;
}

double GrowthFit::newAnimalBandMm(double ageDays) const {
    return studentQuantile(0.975, degreesOfFreedom) * newAnimalAt(ageDays).sdRandom;
}

Outcome<GrowthFit> fitGrowth(std::span<const GrowthPoint> points, GrowthModel model, const GrowthFitOptions& options) {
    const bool heldT0 = model == GrowthModel::VonBertalanffy && options.heldT0Days.has_value();
    const int fitted = parameterCount(model) - (heldT0 ? 1 : 0);
    if (differentAges(points) < static_cast<std::size_t>(fitted)) {
        return Refusal{"too-few-ages", "There are too few different ages for a growth curve; add sessions."};
    }
    const auto solve = [&]() -> Outcome<LeastSquaresFit> {
        if (heldT0) {
            return solveHeldT0(points, *options.heldT0Days);
        }
        const auto starts = growthStarts(points, model);
        std::vector<GrowthPoint> copy(points.begin(), points.end());
        return solveLeastSquares(
            fitted == 2 ? residualModel<2>(std::move(copy), model) : residualModel<3>(std::move(copy), model), starts);
    };
    const auto solved = solve();
    if (!solved) {
        return solved.refusal();
    }
    return described(solved.value(), model, points);
}

Outcome<GrowthChoice> chooseGrowth(std::span<const GrowthPoint> points, std::span<const GrowthModel> models) {
    GrowthChoice choice;
    for (GrowthModel model : models) {
        auto fit = fitGrowth(points, model);
        if (!fit) {
            choice.notFitted.emplace_back(model, fit.refusal());
        } else if (!std::isfinite(fit.value().aicc)) {
            choice.notFitted.emplace_back(
                model, Refusal{"too-few-points", "There are too few observations to choose a curve of this kind."});
        } else {
            choice.fits.push_back(std::move(fit).value());
        }
    }
    if (choice.fits.empty()) {
        return Refusal{"too-few-points", "There are too few observations for any growth curve; add sessions."};
    }
    std::stable_sort(choice.fits.begin(), choice.fits.end(),
                     [](const GrowthFit& a, const GrowthFit& b) { return a.aicc < b.aicc; });
    return choice;
}

}  // namespace ringrule
