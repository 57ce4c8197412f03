// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace ringrule {

/// P(Z ≤ z) of the standard normal distribution.
[[nodiscard]] double normalCdf(double z);
/// The z below which a part p (0 < p < 1) of the standard normal distribution lies.
[[nodiscard]] double normalQuantile(double p);
/// P(T ≤ t) of Student's t with df > 0 (need not be whole).
[[nodiscard]] double studentCdf(double t, double df);
[[nodiscard]] double studentQuantile(double p, double df);
/// The p-value of |t| in both tails.
[[nodiscard]] double studentTwoSided(double t, double df);
/// The chance that a two-sided t test at 5 % finds an effect that is `effect` standard errors large, from the
/// non-central t distribution (both tails).
[[nodiscard]] double studentPower(double effect, double df);
[[nodiscard]] double chiSquaredCdf(double x, double df);
[[nodiscard]] double chiSquaredQuantile(double p, double df);
/// P(F ≤ f) of Fisher's F.
[[nodiscard]] double fisherCdf(double f, double dfNumerator, double dfDenominator);
[[nodiscard]] double fisherQuantile(double p, double dfNumerator, double dfDenominator);

struct ProportionInterval {
    double lower = 0.0;
    double upper = 1.0;
};
/// Wilson's score interval of a proportion (Wilson 1927), two-sided 95 %. Precondition: 0 ≤ hits ≤ trials, trials > 0.
[[nodiscard]] ProportionInterval wilsonInterval(int hits, int trials);

}  // namespace ringrule
