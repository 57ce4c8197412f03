// SPDX-License-Identifier: GPL-3.0-or-later
// A small deterministic random source: the same seed gives the same photo on every machine.
#pragma once

#include <cmath>
#include <cstdint>

namespace render {

class Random {
public:
    explicit Random(std::uint64_t seed) : state_(seed) {}

    // 64 random bits (SplitMix64, Steele, Lea & Flood 2014).
    std::uint64_t bits() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
        return z ^ (z >> 31U);
    }
    // Uniform in [0, 1).
    double unit() { return static_cast<double>(bits() >> 11U) * 0x1.0p-53; }
    double between(double low, double high) { return low + (high - low) * unit(); }
    // Uniform in 0 … count − 1.
    int below(int count) { return static_cast<int>(unit() * count); }
    // Normal deviate (Box–Muller; the second of each pair is not used).
    double normal(double mean = 0.0, double sd = 1.0) {
        const double radius = std::sqrt(-2.0 * std::log(1.0 - unit()));
        return mean + sd * radius * std::cos(6.283185307179586 * unit());
    }

private:
    std::uint64_t state_;
};

// A seed for one named part of a scene, so that parts do not disturb each other.
inline std::uint64_t seedOf(std::uint64_t seed, std::uint64_t part) {
    Random mix(seed ^ (part * 0xD1342543DE82EF95ULL));
    return mix.bits();
}

}  // namespace render
