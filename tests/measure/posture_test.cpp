// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/posture.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "measure/trunk.h"

using namespace ringrule;

namespace {

/// A straight body 100 mm long and 4 mm deep.
BodyInMm straightBody() {
    BodyInMm body;
    for (int i = 0; i <= 100; ++i) {
        const double x = i;
        body.spine.push_back({x, 30.0});
        body.left.push_back({x, 28.0});
        body.right.push_back({x, 32.0});
        body.along.push_back(x);
        body.alongPx.push_back(10.0 * x);
        body.depth.push_back(4.0);
    }
    return body;
}

double wholeLength(const BodyInMm& body) {
    return body.along.back();
}

constexpr double kSine4 = 0.0697564737;  // sin 4°
constexpr double kCos4 = 0.9975640503;

}  // namespace

TEST_CASE("A pitched body is shorter by the cosine and deeper where it is nearer") {
    CHECK(wholeLength(pitched(straightBody(), 10.0, 0.0)) == Approx(98.4807753).epsilon(1e-9));  // 100 cos 10°
    const BodyInMm turned = pitched(straightBody(), 4.0, 0.002);
    // The tail's end comes 50 mm · sin 4° nearer, the snout goes as far back.
    CHECK(turned.depth.back() == Approx(4.0 * (1.0 + 0.002 * 50.0 * kSine4)).epsilon(1e-9));
    CHECK(turned.depth.front() == Approx(4.0 * (1.0 - 0.002 * 50.0 * kSine4)).epsilon(1e-9));
    CHECK(turned.depth[50] == Approx(4.0).epsilon(1e-9));
}

TEST_CASE("What an unknown pitch does to a measure") {
    // 95 % of the squares of a standard normal lie below 1.96²: of c θ² below 1.96² c σ².
    CHECK(PitchDoubt(straightBody(), 0.0).sdOf(wholeLength) == Approx(1.959963984540054 * 100.0 * (1.0 - kCos4)));
    const PitchDoubt doubt(straightBody(), 0.002);
    CHECK(doubt.sdOf([](const BodyInMm& body) { return body.depth.back(); }) ==
          Approx(4.0 * 0.002 * 50.0 * kSine4).epsilon(1e-6));
    // The first 20 mm lie 50 to 30 mm before the middle: k sin θ (50² − 30²), and are shortened by 1 − cos θ, which
    // adds at most 1.96 times itself.
    const double head = doubt.sdOf([](const BodyInMm& body) { return body.alongAt(200.0); });
    const double nearer = 0.002 * kSine4 * 1600.0;
    CAPTURE(head, nearer);
    CHECK(head > nearer);
    CHECK(head < nearer + 1.96 * 20.0 * (1.0 - kCos4));
}

TEST_CASE("95 % of what an unknown pitch does lie within the interval, whichever of its two parts is the larger") {
    const PitchDoubt doubt(straightBody(), 0.002);
    const double linear = 4.0 * 0.002 * 50.0 * kSine4;
    const double square = -100.0 * (1.0 - kCos4);
    for (const double weight : {0.0, 1.0, 4.0, 9.0, 20.0, 100.0}) {
        const double sd = doubt.sdOf(
            [&](const BodyInMm& body) { return wholeLength(body) + weight * (body.depth.back() - body.depth[50]); });
        // The measure's own error a t + c t², over 100,000 equal shares of a standard normal t, by their densities.
        double inside = 0.0;
        double all = 0.0;
        for (int i = 0; i < 100000; ++i) {
            const double t = -8.0 + 16.0 * (i + 0.5) / 100000.0;
            const double density = std::exp(-0.5 * t * t);
            all += density;
            if (std::abs(weight * linear * t + square * t * t) <= 1.959963984540054 * sd) inside += density;
        }
        CAPTURE(weight);
        CHECK(inside / all == Approx(0.95).margin(0.001));  // depth and length bend a little more than a t + c t²
    }
}

TEST_CASE("A fin that was taken into the outline shows as a step of the depth") {
    BodyInMm body = straightBody();
    // A trunk that swells and narrows again over 40 mm by half its depth: no step.
    for (std::size_t i = 20; i <= 60; ++i)
        body.depth[i] = 4.0 + 2.0 * std::sin(M_PI * (static_cast<double>(i) - 20.0) / 40.0);
    CHECK(greatestStepMm(body, 20.0, 60.0) < 0.05 * 6.0);
    for (std::size_t i = 45; i <= 60; ++i) body.depth[i] += 1.5;
    CHECK(greatestStepMm(body, 20.0, 60.0) > 0.15 * 6.0);
    CHECK(greatestStepMm(body, 20.0, 43.0) < 0.05 * 6.0);
}
