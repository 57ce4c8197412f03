// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/robust.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace ringrule {

namespace {

constexpr double kNormalMad = 1.482602218505602;  // 1 / Φ⁻¹(3/4)

double huberWeight(double standardised, double tuning) {
    const double size = std::abs(standardised);
    return size <= tuning ? 1.0 : tuning / size;
}

struct WeightedSums {
    double weight = 0.0;
    double meanX = 0.0;
    double meanY = 0.0;
    double squaresX = 0.0;
    double productsXY = 0.0;
};

WeightedSums weightedSums(std::span<const double> x, std::span<const double> y, std::span<const double> w) {
    WeightedSums sums;
    for (std::size_t i = 0; i < x.size(); ++i) {
        sums.weight += w[i];
        sums.meanX += w[i] * x[i];
        sums.meanY += w[i] * y[i];
    }
    sums.meanX /= sums.weight;
    sums.meanY /= sums.weight;
    for (std::size_t i = 0; i < x.size(); ++i) {
        sums.squaresX += w[i] * (x[i] - sums.meanX) * (x[i] - sums.meanX);
        sums.productsXY += w[i] * (x[i] - sums.meanX) * (y[i] - sums.meanY);
    }
    return sums;
}

/// Scale of the residuals about zero: MAD, or a trace of the values' size when most fit exactly.
double residualScale(std::span<const double> residuals, std::size_t parameters) {
    std::vector<double> sizes;
    sizes.reserve(residuals.size());
    for (double r : residuals) {
        sizes.push_back(std::abs(r));
    }
    const auto n = static_cast<double>(residuals.size());
    const double freedom = n > static_cast<double>(parameters) ? n / (n - static_cast<double>(parameters)) : 1.0;
    return kNormalMad * median(sizes) * std::sqrt(freedom);
}

/// Standard error of a Huber slope from its clipped residuals and the part of points that are not clipped.
double huberSlopeSd(std::span<const double> residuals, double limit, double squaresX) {
    const auto n = static_cast<double>(residuals.size());
    double clipped = 0.0;
    double inside = 0.0;
    for (double r : residuals) {
        clipped += std::pow(std::min(std::abs(r), limit), 2);
        inside += std::abs(r) <= limit ? 1.0 : 0.0;
    }
    const double part = inside / n;
    return std::sqrt(clipped / (n - 2.0) / squaresX) / part;
}

}  // namespace

double median(std::span<const double> values) {
    if (values.empty()) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    const std::size_t middle = sorted.size() / 2;
    return sorted.size() % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
}

double medianAbsoluteDeviation(std::span<const double> values) {
    const double centre = median(values);
    std::vector<double> distances;
    distances.reserve(values.size());
    for (double v : values) {
        distances.push_back(std::abs(v - centre));
    }
    return kNormalMad * median(distances);
}

RobustSpread robustSpread(std::span<const double> values) {
    return {median(values), medianAbsoluteDeviation(values), static_cast<int>(values.size())};
}

double huberMean(std::span<const double> values, const HuberOptions& options) {
    double centre = median(values);
    const double scale = medianAbsoluteDeviation(values);
    if (!(scale > 0.0)) {
        return centre;
    }
    for (int round = 0; round < options.maxIterations; ++round) {
        double weightSum = 0.0;
        double total = 0.0;
        for (double v : values) {
            const double w = huberWeight((v - centre) / scale, options.tuning);
            weightSum += w;
            total += w * v;
        }
        const double next = total / weightSum;
        const bool settled = std::abs(next - centre) <= 1e-12 * scale;
        centre = next;
        if (settled) {
            break;
        }
    }
    return centre;
}

LineFit huberLine(std::span<const double> x, std::span<const double> y, std::span<const double> weights,
                  const HuberOptions& options) {
    assert(x.size() == y.size() && x.size() >= 2 && (weights.empty() || weights.size() == x.size()));
    std::vector<double> prior(weights.begin(), weights.end());
    prior.resize(x.size(), 1.0);
    std::vector<double> weight = prior;
    std::vector<double> residuals(x.size());
    LineFit line;
    line.points = static_cast<int>(x.size());
    double scale = 0.0;
    WeightedSums sums;
    for (int round = 0; round < options.maxIterations; ++round) {
        sums = weightedSums(x, y, weight);
        const double slope = sums.productsXY / sums.squaresX;
        const bool settled = round > 0 && std::abs(slope - line.slope) <= 1e-12 * (1.0 + std::abs(slope));
        line.slope = slope;
        line.intercept = sums.meanY - slope * sums.meanX;
        for (std::size_t i = 0; i < x.size(); ++i) {
            residuals[i] = (y[i] - line.at(x[i])) * std::sqrt(prior[i]);
        }
        scale = residualScale(residuals, 2);
        if (settled || !(scale > 0.0)) {
            break;
        }
        for (std::size_t i = 0; i < x.size(); ++i) {
            weight[i] = prior[i] * huberWeight(residuals[i] / scale, options.tuning);
        }
    }
    line.residualSd = scale;
    if (x.size() > 2 && scale > 0.0) {
        line.slopeSd = huberSlopeSd(residuals, options.tuning * scale, weightedSums(x, y, prior).squaresX);
    }
    return line;
}

TheilSenLine theilSen(std::span<const double> x, std::span<const double> y) {
    assert(x.size() == y.size());
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            if (x[i] != x[j]) {
                slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
            }
        }
    }
    assert(!slopes.empty());
    std::sort(slopes.begin(), slopes.end());
    TheilSenLine line;
    line.slope = median(slopes);
    std::vector<double> intercepts;
    for (std::size_t i = 0; i < x.size(); ++i) {
        intercepts.push_back(y[i] - line.slope * x[i]);
    }
    line.intercept = median(intercepts);
    // Sen (1968): ranks of the slopes at the normal limits of Kendall's S.
    const auto n = static_cast<double>(x.size());
    const double half = 1.959963984540054 * std::sqrt(n * (n - 1.0) * (2.0 * n + 5.0) / 18.0);
    const auto count = static_cast<double>(slopes.size());
    const double low = std::max(0.0, std::floor((count - half) / 2.0) - 1.0);
    const double high = std::min(count - 1.0, std::ceil((count + half) / 2.0));
    line.slopeLower = slopes[static_cast<std::size_t>(low)];
    line.slopeUpper = slopes[static_cast<std::size_t>(high)];
    return line;
}

}  // namespace ringrule
