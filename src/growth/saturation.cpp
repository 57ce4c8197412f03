// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "growth/age_curve.h"

namespace ringrule {

namespace {

constexpr int kSteps = 17;

/// Sums of one animal's line.
struct Line {
    int values = 0;
    double n = 0.0;
    double x = 0.0;
    double y = 0.0;
    double xx = 0.0;
    double xy = 0.0;
    double yy = 0.0;

    void add(double xOne, double yOne, double weight) {
        ++values;
        n += weight;
        x += weight * xOne;
        y += weight * yOne;
        xx += weight * xOne * xOne;
        xy += weight * xOne * yOne;
        yy += weight * yOne * yOne;
    }
    [[nodiscard]] double squaresAbout() const {
        if (values < 3) {
            return 0.0;  // a line goes through two
        }
        const double sxx = xx - x * x / n;
        const double sxy = xy - x * y / n;
        const double syy = yy - y * y / n;
        return std::max(0.0, sxx > 0.0 ? syy - sxy * sxy / sxx : syy);
    }
};

}  // namespace

std::optional<double> saturationPerDay(std::span<const AnimalLength> lengths, std::span<const int> animal,
                                       LengthScale scale, std::span<const double> weights) {
    const auto [young, old] = std::minmax_element(lengths.begin(), lengths.end(),
                                                  [](const auto& a, const auto& b) { return a.ageDays < b.ageDays; });
    const double from = young->ageDays;
    const double span = old->ageDays - from;
    const double middle = onScale(scale, young->lengthMm);
    const auto squares = [&](double logK) {
        const double k = std::exp(logK);
        double sum = 0.0;
        Line line;
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            if (i > 0 && animal[i] != animal[i - 1]) {
                sum += line.squaresAbout();
                line = {};
            }
            const double y = onScale(scale, lengths[i].lengthMm);
            line.add(std::exp(-k * (lengths[i].ageDays - from)), y - middle, weights[i]);
        }
        return sum + line.squaresAbout();
    };
    // A grid over ln k, then golden sections about its best point.
    const double low = std::log(0.2 / span);
    const double step = (std::log(12.0 / span) - low) / kSteps;
    int best = 0;
    double least = squares(low);
    for (int i = 1; i <= kSteps; ++i) {
        const double one = squares(low + i * step);
        if (one < least) {
            least = one;
            best = i;
        }
    }
    if (best == 0 || best == kSteps) {
        return std::nullopt;
    }
    constexpr double kGolden = 0.6180339887498949;
    double a = low + (best - 1) * step;
    double b = low + (best + 1) * step;
    for (int i = 0; i < 20; ++i) {
        const double c = b - kGolden * (b - a);
        const double d = a + kGolden * (b - a);
        (squares(c) < squares(d) ? b : a) = squares(c) < squares(d) ? d : c;
    }
    return std::exp(0.5 * (a + b));
}

}  // namespace ringrule
