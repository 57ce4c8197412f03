// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace ringrule {

/// The middle value (mean of the two middle ones); NaN of nothing.
[[nodiscard]] double median(std::span<const double> values);

/// 1.4826 times the median distance from the median: the standard deviation, were the values normal (Hampel 1974). NaN
/// of nothing.
[[nodiscard]] double medianAbsoluteDeviation(std::span<const double> values);

/// A median with a spread beside it, and how many values it rests on.
struct RobustSpread {
    double centre = 0.0;
    double spread = 0.0;  ///< 1.4826·MAD
    int count = 0;
};
[[nodiscard]] RobustSpread robustSpread(std::span<const double> values);

struct HuberOptions {
    double tuning = 1.345;  ///< 95 % as good as the mean on normal values (Huber 1981)
    int maxIterations = 100;
};

/// Huber's M-estimate of location, scale held at 1.4826·MAD; the median when that is zero.
[[nodiscard]] double huberMean(std::span<const double> values, const HuberOptions& options = {});

/// A straight line y = intercept + slope·x.
struct LineFit {
    double intercept = 0.0;
    double slope = 0.0;
    double slopeSd = 0.0;
    double residualSd = 0.0;  ///< robust (1.4826·MAD about the line)
    int points = 0;

    [[nodiscard]] double at(double x) const { return intercept + slope * x; }
};

/// Huber's regression line by reweighted least squares; `weights` empty means equal. The slope's error follows Street,
/// Carroll & Ruppert (1988). Precondition: sizes agree, at least two different x.
[[nodiscard]] LineFit huberLine(std::span<const double> x, std::span<const double> y,
                                std::span<const double> weights = {}, const HuberOptions& options = {});

/// The Theil–Sen line: median of all pairwise slopes, median intercept, with Sen's (1968) 95 % interval of the slope.
struct TheilSenLine {
    double intercept = 0.0;
    double slope = 0.0;
    double slopeLower = 0.0;
    double slopeUpper = 0.0;
};
/// Precondition: sizes agree, at least two different x.
[[nodiscard]] TheilSenLine theilSen(std::span<const double> x, std::span<const double> y);

}  // namespace ringrule
