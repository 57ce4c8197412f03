// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/propagate.h"

#include <cmath>
#include <vector>

namespace ringrule {

namespace {

/// An estimate from its value and the signed effect that each input's errors have on it.
Estimate combined(double value, double randomA, double randomB, double sharedA, double sharedB, SharedPart shared) {
    Estimate result;
    if (!std::isfinite(value)) {
        return result;
    }
    result.value = value;
    result.sdRandom = std::hypot(randomA, randomB);
    result.sdShared = shared == SharedPart::Common ? std::abs(sharedA + sharedB) : std::hypot(sharedA, sharedB);
    return result;
}

Estimate linear(double value, const Estimate& a, double slopeA, const Estimate& b, double slopeB, SharedPart shared) {
    return combined(value, slopeA * a.sdRandom, slopeB * b.sdRandom, slopeA * a.sdShared, slopeB * b.sdShared, shared);
}

Estimate scaledTo(double value, const Estimate& a, double slope) {
    return combined(value, slope * a.sdRandom, 0.0, slope * a.sdShared, 0.0, SharedPart::Separate);
}

}  // namespace

Estimate sum(const Estimate& a, const Estimate& b, SharedPart shared) {
    return linear(a.value + b.value, a, 1.0, b, 1.0, shared);
}

Estimate difference(const Estimate& a, const Estimate& b, SharedPart shared) {
    return linear(a.value - b.value, a, 1.0, b, -1.0, shared);
}

Estimate product(const Estimate& a, const Estimate& b, SharedPart shared) {
    return linear(a.value * b.value, a, b.value, b, a.value, shared);
}

Estimate ratio(const Estimate& a, const Estimate& b, SharedPart shared) {
    const double value = a.value / b.value;
    return linear(value, a, 1.0 / b.value, b, -value / b.value, shared);
}

Estimate scaled(const Estimate& a, double factor) {
    return scaledTo(a.value * factor, a, factor);
}

Estimate shifted(const Estimate& a, double offset) {
    return scaledTo(a.value + offset, a, 1.0);
}

Estimate logarithm(const Estimate& a) {
    return scaledTo(std::log(a.value), a, 1.0 / a.value);
}

Estimate exponential(const Estimate& a) {
    const double value = std::exp(a.value);
    return scaledTo(value, a, value);
}

Estimate mean(std::span<const Estimate> values, SharedPart shared) {
    double total = 0.0;
    double randomSquares = 0.0;
    double sharedSum = 0.0;
    double sharedSquares = 0.0;
    double count = 0.0;
    for (const Estimate& one : values) {
        if (!one.known()) {
            continue;
        }
        total += one.value;
        randomSquares += one.sdRandom * one.sdRandom;
        sharedSum += one.sdShared;
        sharedSquares += one.sdShared * one.sdShared;
        count += 1.0;
    }
    if (count == 0.0) {
        return {};
    }
    const double sharedTotal = shared == SharedPart::Common ? sharedSum : std::sqrt(sharedSquares);
    return {total / count, std::sqrt(randomSquares) / count, sharedTotal / count};
}

Estimate propagate(const std::function<double(std::span<const double>)>& f, std::span<const Estimate> inputs,
                   SharedPart shared) {
    std::vector<double> at;
    for (const Estimate& input : inputs) {
        at.push_back(input.value);
    }
    Estimate result;
    const double value = f(at);
    double randomSquares = 0.0;
    double sharedSum = 0.0;
    double sharedSquares = 0.0;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const Estimate& input = inputs[i];
        const double step = input.sd() > 0.0 ? input.sd() : 1e-6 * std::max(1.0, std::abs(input.value));
        at[i] = input.value + step;
        const double above = f(at);
        at[i] = input.value - step;
        const double below = f(at);
        at[i] = input.value;
        const double slope = (above - below) / (2.0 * step);
        randomSquares += std::pow(slope * input.sdRandom, 2);
        sharedSum += slope * input.sdShared;
        sharedSquares += std::pow(slope * input.sdShared, 2);
    }
    if (!std::isfinite(value + randomSquares + sharedSquares)) {
        return result;
    }
    result.value = value;
    result.sdRandom = std::sqrt(randomSquares);
    result.sdShared = shared == SharedPart::Common ? std::abs(sharedSum) : std::sqrt(sharedSquares);
    return result;
}

}  // namespace ringrule
