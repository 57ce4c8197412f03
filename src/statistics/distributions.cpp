// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/distributions.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cassert>
#include <cmath>

namespace ringrule {

double normalCdf(double z) {
    return boost::math::cdf(boost::math::normal(), z);
}

double normalQuantile(double p) {
    return boost::math::quantile(boost::math::normal(), p);
}

double studentCdf(double t, double df) {
    return boost::math::cdf(boost::math::students_t(df), t);
}

double studentQuantile(double p, double df) {
    return boost::math::quantile(boost::math::students_t(df), p);
}

double studentTwoSided(double t, double df) {
    return 2.0 * boost::math::cdf(boost::math::complement(boost::math::students_t(df), std::abs(t)));
}

double studentPower(double effect, double df) {
    const double critical = studentQuantile(0.975, df);
    const boost::math::non_central_t moved(df, std::abs(effect));
    return boost::math::cdf(boost::math::complement(moved, critical)) + boost::math::cdf(moved, -critical);
}

double chiSquaredCdf(double x, double df) {
    return boost::math::cdf(boost::math::chi_squared(df), x);
}

double chiSquaredQuantile(double p, double df) {
    return boost::math::quantile(boost::math::chi_squared(df), p);
}

double fisherQuantile(double p, double dfNumerator, double dfDenominator) {
    return boost::math::quantile(boost::math::fisher_f(dfNumerator, dfDenominator), p);
}

double fisherCdf(double f, double dfNumerator, double dfDenominator) {
    return boost::math::cdf(boost::math::fisher_f(dfNumerator, dfDenominator), f);
}

ProportionInterval wilsonInterval(int hits, int trials) {
    assert(trials > 0 && hits >= 0 && hits <= trials);
    const double z = 1.959963984540054;
    const double n = trials;
    const double p = hits / n;
    const double centre = (p + z * z / (2.0 * n)) / (1.0 + z * z / n);
    const double half = z / (1.0 + z * z / n) * std::sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n));
    return {centre - half, centre + half};
}

}  // namespace ringrule
