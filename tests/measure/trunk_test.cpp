// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/trunk.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;

namespace {

/// A straight trunk along x, 100 mm long and 20 mm deep; its belly, on the left, strays by `bellyMm(x)` toward the
/// body.
template <class Belly>
BodyInMm trunkWith(Belly bellyMm) {
    BodyInMm body;
    for (int i = 0; i <= 100; ++i) {
        const double x = i;
        body.spine.push_back({x, 0.0});
        body.left.push_back({x, -10.0 + bellyMm(x)});
        body.right.push_back({x, 10.0});
        body.along.push_back(x);
        body.alongPx.push_back(x);
        body.depth.push_back(body.right.back().y - body.left.back().y);
    }
    return body;
}

}  // namespace

TEST_CASE("A belly's hollow is its deepest deviation, told with that to the other side", "[trunk]") {
    const auto hollow = trunkWith([](double x) { return 0.8 * std::sin(M_PI * x / 100.0); });
    CHECK(hollowOf(hollow, 0.0, 100.0, true).mm == Approx(0.8).margin(1e-9));
    CHECK(hollowOf(hollow, 0.0, 100.0, true).otherMm == 0.0);

    const auto round = trunkWith([](double x) { return -1.5 * std::sin(M_PI * x / 100.0); });
    CHECK(hollowOf(round, 0.0, 100.0, true).mm == Approx(-1.5).margin(1e-9));

    // Hollow in front and a little rounder behind: the rounder half is the deepest, the hollow is told beside it.
    const auto both = trunkWith([](double x) { return (x < 50.0 ? 0.5 : 0.6) * std::sin(M_PI * x / 50.0); });
    CHECK(hollowOf(both, 0.0, 100.0, true).mm == Approx(-0.6).margin(1e-9));
    CHECK(hollowOf(both, 0.0, 100.0, true).otherMm == Approx(0.5).margin(1e-9));

    CHECK_FALSE(std::isfinite(hollowOf(both, 0.0, 5.0, true).mm));
}

TEST_CASE("Chords that fan out beside a raised head are no depth", "[trunk]") {
    BodyInMm body = trunkWith([](double) { return 0.0; });
    // The first chords turn about a point beyond the belly: their left feet walk backward, and they are too long.
    for (int i = 0; i < 6; ++i) {
        const auto at = static_cast<std::size_t>(i);
        const double lean = 0.5 * (6 - i);
        body.left[at] = {body.spine[at].x + lean * 2.5, -10.0};
        body.right[at] = {body.spine[at].x - lean * 2.5, 10.0};
        body.depth[at] = std::hypot(body.left[at].x - body.right[at].x, 20.0);
    }
    CHECK(body.depth.front() > 24.0);
    const TrunkDepth greatest = greatestDepth(body, 0.0, 100.0);
    CHECK(greatest.depthMm == Approx(20.0).epsilon(1e-6));
    CHECK(greatest.alongMm >= 5.0);
}
