// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/growth_starts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

/// The line through the points after both axes are transformed; points outside a transform's domain are left out.
LineFit transformedLine(std::span<const GrowthPoint> points, const std::function<double(double)>& ofLength) {
    std::vector<double> x;
    std::vector<double> y;
    for (const GrowthPoint& point : points) {
        const double value = ofLength(point.lengthMm);
        if (std::isfinite(value)) {
            x.push_back(point.ageDays);
            y.push_back(value);
        }
    }
    const auto [low, high] = std::minmax_element(x.begin(), x.end());
    if (x.size() < 2 || *low == *high) {
        return {};
    }
    return huberLine(x, y);
}

/// Each model that levels off is a straight line in age once its asymptote A is guessed.
Eigen::VectorXd startAtAsymptote(std::span<const GrowthPoint> points, GrowthModel model, double a) {
    if (model == GrowthModel::VonBertalanffy) {
        const LineFit line = transformedLine(points, [a](double length) { return std::log(1.0 - length / a); });
        const double k = line.slope < 0.0 ? -line.slope : 1e-3;
        return Eigen::Vector3d(a, k, line.intercept / k);
    }
    if (model == GrowthModel::Gompertz) {
        const LineFit line = transformedLine(points, [a](double length) { return std::log(std::log(a / length)); });
        return Eigen::Vector3d(a, std::exp(line.intercept), line.slope < 0.0 ? -line.slope : 1e-3);
    }
    const LineFit line = transformedLine(points, [a](double length) { return std::log(length / (a - length)); });
    const double k = line.slope > 0.0 ? line.slope : 1e-3;
    return Eigen::Vector3d(a, k, -line.intercept / k);
}

}  // namespace

std::vector<Eigen::VectorXd> growthStarts(std::span<const GrowthPoint> points, GrowthModel model) {
    if (model == GrowthModel::Linear) {
        const LineFit line = transformedLine(points, [](double length) { return length; });
        return {Eigen::Vector2d(line.intercept, line.slope)};
    }
    if (model == GrowthModel::Exponential) {
        const LineFit line = transformedLine(points, [](double length) { return std::log(length); });
        return {Eigen::Vector2d(std::exp(line.intercept), line.slope)};
    }
    double longest = 0.0;
    for (const GrowthPoint& point : points) {
        longest = std::max(longest, point.lengthMm);
    }
    std::vector<Eigen::VectorXd> starts;
    for (double beyond : std::array{1.03, 1.3, 2.5}) {
        starts.push_back(startAtAsymptote(points, model, beyond * longest));
    }
    return starts;
}

}  // namespace ringrule
