// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/edge.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;
using Catch::Matchers::WithinAbs;

namespace {

double share(double x) {
    return 0.5 * std::erfc(-x / std::sqrt(2.0));
}

/// A blurred step at `at`, dark inside, with a slope of light per px outside; a bar when `width` is finite.
Profile step(double at, double sigma, double inside, double outside, double slopeOutside = 0.0, double width = 1e9) {
    Profile profile;
    profile.stepPx = 0.5;
    profile.inner = 10;
    for (int i = 0; i <= 20; ++i) {
        const double t = (i - 10) * 0.5 - at;
        double body = 1.0 - share(t / sigma);
        if (width < 1e8) body -= 1.0 - share((t + width) / sigma);
        profile.light.push_back(
            static_cast<float>(outside + (inside - outside) * body + slopeOutside * std::max(0.0, t)));
    }
    return profile;
}

}  // namespace

TEST_CASE("A blurred step is found where it is") {
    // The table of the normal distribution is good to 1e-5; what is left is the fit's own stopping rule.
    for (const double at : {-1.3, -0.4, 0.0, 0.25, 1.7}) {
        for (const double sigma : {0.6, 0.9, 1.5}) {
            const StepEdge edge = fitStep(step(at, sigma, 0.08, 0.6), {.sigmaPx = sigma, .startPx = at + 0.4});
            REQUIRE(edge.found);
            CHECK_THAT(edge.atPx, WithinAbs(at, 0.01));
            CHECK_THAT(edge.inside, WithinAbs(0.08, 0.01));
            CHECK_THAT(edge.outside, WithinAbs(0.6, 0.01));
        }
    }
}

TEST_CASE("A soft shadow beside the body does not move its edge") {
    // Light that recovers by one per cent of the step a pixel, about the steepest that a body 8 mm before the plate
    // casts.
    const StepEdge edge = fitStep(step(0.3, 0.9, 0.08, 0.45, 0.0037), {.sigmaPx = 0.9});
    REQUIRE(edge.found);
    CHECK_THAT(edge.atPx, WithinAbs(0.3, 0.05));
}

TEST_CASE("A body thinner than its blur is a bar, not a step") {
    const double width = 2.0;
    const Profile profile = step(0.2, 1.0, 0.1, 0.6, 0.0, width);
    const StepPrior prior{.sigmaPx = 1.0, .startPx = 0.0, .oppositePx = 0.2 - width, .insideLight = 0.1};
    const StepEdge edge = fitStep(profile, prior);
    REQUIRE(edge.found);
    CHECK_THAT(edge.atPx, WithinAbs(0.2, 0.05));
}

TEST_CASE("Even light and an edge that runs the other way are no edges") {
    CHECK_FALSE(fitStep(step(0.0, 0.9, 0.5, 0.5), {.sigmaPx = 0.9}).found);
    CHECK_FALSE(fitStep(step(0.0, 0.9, 0.6, 0.1), {.sigmaPx = 0.9}).found);
}

TEST_CASE("The blur is measured from many edges together") {
    std::vector<Profile> profiles;
    std::vector<StepEdge> edges;
    for (int i = 0; i < 60; ++i) {
        const double at = 0.013 * i - 0.4;
        profiles.push_back(step(at, 1.2, 0.1, 0.6));
        edges.push_back({true, at, 0.1, 0.6, 0.0});
    }
    // Bins of a quarter pixel add their own width: sqrt(1.2² + 0.25²/12) = 1.202.
    CHECK_THAT(pooledBlur(profiles, edges), WithinAbs(1.2, 0.05));
    CHECK(pooledBlur({}, {}) == 0.0);
}
