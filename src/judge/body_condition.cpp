// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/body_condition.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "ringrule/statistics/robust.h"

namespace ringrule {

namespace {

constexpr std::size_t kLeastAnimals = 10;
constexpr double kLeastRatio = 1.5;

bool positive(const Estimate& estimate) {
    return estimate.known() && estimate.value > 0.0;
}

/// `factor` · weight · length^power with relative errors added in squares; weight and length err apart.
Estimate product(double factor, const Estimate& weight, const Estimate& length, double power) {
    if (!positive(weight) || !positive(length)) {
        return {};
    }
    const double value = factor * weight.value * std::pow(length.value, power);
    const double random = std::hypot(weight.sdRandom / weight.value, power * length.sdRandom / length.value);
    const double shared = std::hypot(weight.sdShared / weight.value, power * length.sdShared / length.value);
    return {value, value * random, value * shared};
}

}  // namespace

Estimate massFromLength(const LengthWeight& law, const Estimate& lengthMm) {
    return product(law.a, {1.0, 0.0, 0.0}, lengthMm, law.b);
}

Estimate fultonK(const Estimate& weightG, const Estimate& lengthMm) {
    // L in cm: (L mm / 10)³, so 100 · 10³.
    return product(1.0e5, weightG, lengthMm, -3.0);
}

Estimate relativeCondition(const Estimate& weightG, const Estimate& lengthMm, const LengthWeight& law) {
    return product(1.0 / law.a, weightG, lengthMm, -law.b);
}

Outcome<LengthWeight> fitLengthWeight(std::span<const Weighed> animals) {
    std::vector<double> x;
    std::vector<double> y;
    for (const Weighed& animal : animals) {
        if (!(animal.lengthMm > 0.0) || !(animal.weightG > 0.0)) {
            return Refusal{"no-length", "A length or a weight is not above zero."};
        }
        x.push_back(std::log(animal.lengthMm));
        y.push_back(std::log(animal.weightG));
    }
    const bool few = x.size() < kLeastAnimals;
    if (few || *std::max_element(x.begin(), x.end()) - *std::min_element(x.begin(), x.end()) < std::log(kLeastRatio)) {
        return Refusal{"too-few-points",
                       "A law of weight on length needs ten weighed animals, the longest half as long again as the "
                       "shortest."};
    }
    const LineFit line = huberLine(x, y);
    return LengthWeight{std::exp(line.intercept), line.slope, std::to_string(x.size()) + " animals of this collection"};
}

}  // namespace ringrule
