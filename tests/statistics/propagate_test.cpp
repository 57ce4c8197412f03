// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/statistics/propagate.h"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <vector>

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Shared errors cancel between tankmates of a session and add between set-ups") {
    const Estimate a{100.0, 0.3, 0.5};
    const Estimate b{90.0, 0.4, 0.45};
    const Estimate within = difference(a, b, SharedPart::Common);
    CHECK(within.value == 10.0);
    CHECK_THAT(within.sdRandom, WithinRel(0.5, 1e-12));
    CHECK_THAT(within.sdShared, WithinAbs(0.05, 1e-12));  // 0.5 % of the difference of 10
    CHECK_THAT(difference(a, b, SharedPart::Separate).sdShared, WithinRel(std::hypot(0.5, 0.45), 1e-12));
    CHECK_THAT(sum(a, b, SharedPart::Common).sdShared, WithinRel(0.95, 1e-12));
    CHECK_THAT(ratio(a, b, SharedPart::Common).sdShared, WithinAbs(0.0, 1e-15));  // both are off by the same 0.5 %
}

TEST_CASE("A mean shrinks the random part only") {
    const std::vector<Estimate> photos(4, Estimate{100.0, 0.4, 0.5});
    const Estimate together = mean(photos, SharedPart::Common);
    CHECK_THAT(together.sdRandom, WithinRel(0.2, 1e-12));
    CHECK_THAT(together.sdShared, WithinRel(0.5, 1e-12));
    CHECK_THAT(mean(photos, SharedPart::Separate).sdShared, WithinRel(0.25, 1e-12));
}

TEST_CASE("Unknown stays unknown") {
    const Estimate known{1.0, 0.1, 0.0};
    CHECK_FALSE(difference(known, Estimate{}, SharedPart::Common).known());
    CHECK_FALSE(ratio(known, Estimate{0.0, 0.1, 0.0}, SharedPart::Common).known());
    CHECK_FALSE(logarithm(Estimate{-1.0, 0.1, 0.0}).known());
    CHECK_FALSE(mean(std::vector<Estimate>{Estimate{}}, SharedPart::Common).known());
    // A mean is of what is known.
    CHECK(mean(std::vector<Estimate>{Estimate{}, known}, SharedPart::Common).value == 1.0);
}

TEST_CASE("Numerical propagation agrees with the closed forms") {
    const std::array<Estimate, 2> in{Estimate{120.0, 0.4, 0.6}, Estimate{4.3, 0.05, 0.06}};
    const auto f = [](std::span<const double> v) { return v[1] / v[0]; };
    for (const auto shared : {SharedPart::Common, SharedPart::Separate}) {
        const Estimate numeric = propagate(f, in, shared);
        const Estimate closed = ratio(in[1], in[0], shared);
        // Second-order terms of a 0.5 % error are about 1e-5 of the error.
        CHECK_THAT(numeric.sdRandom, WithinRel(closed.sdRandom, 1e-4));
        CHECK_THAT(numeric.sdShared, WithinRel(closed.sdShared, 1e-4));
    }
    CHECK_THAT(product(in[0], in[1], SharedPart::Common).sdRandom,
               WithinRel(std::hypot(4.3 * 0.4, 120.0 * 0.05), 1e-12));
}

TEST_CASE("The 95 % interval of a ratio covers the truth") {
    std::mt19937_64 generator(11);
    std::normal_distribution<double> normal;
    int covered = 0;
    const int scenes = 4000;
    for (int i = 0; i < scenes; ++i) {
        const double common = normal(generator);
        const Estimate a{120.0 + 0.5 * normal(generator) + 0.6 * common, 0.5, 0.6};
        const Estimate b{4.3 + 0.05 * normal(generator) + 0.0215 * common, 0.05, 0.0215};
        const Estimate r = ratio(b, a, SharedPart::Common);
        covered += std::abs(r.value - 4.3 / 120.0) <= r.u95() ? 1 : 0;
    }
    // 95 % of 4000 has a standard error of 0.34 %: four of them.
    CHECK_THAT(covered / static_cast<double>(scenes), WithinAbs(0.95, 0.014));
}
