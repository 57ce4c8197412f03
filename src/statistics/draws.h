// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <random>

namespace ringrule {

/// n over k, or `limit` + 1 when larger.
[[nodiscard]] inline std::uint64_t splitsOf(std::uint64_t n, std::uint64_t k, std::uint64_t limit) {
    std::uint64_t result = 1;
    k = std::min(k, n - k);
    for (std::uint64_t i = 1; i <= k; ++i) {
        result = result * (n - k + i) / i;
        if (result > limit) {
            return limit + 1;
        }
    }
    return result;
}

/// A uniform index below n, the same on every platform (std::uniform_int_distribution is not).
[[nodiscard]] inline std::size_t indexBelow(std::mt19937_64& generator, std::size_t n) {
    const std::uint64_t bound = n;
    const std::uint64_t limit = (~std::uint64_t{0}) - (~std::uint64_t{0}) % bound;
    std::uint64_t draw = generator();
    while (draw >= limit) {
        draw = generator();
    }
    return static_cast<std::size_t>(draw % bound);
}

}  // namespace ringrule
