// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <vector>

#include "ringrule/imaging/sharpness.h"
#include "ringrule/imaging/tone.h"

using namespace ringrule;

namespace {

std::vector<float> blurredStep(double sigmaPx, double edgePx, double stepPx, double from, double to,
                               double noise = 0.0) {
    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    std::vector<float> light;
    for (double x = -15.0; x <= 15.0; x += stepPx)
        light.push_back(static_cast<float>(
            from + (to - from) * 0.5 * std::erfc((edgePx - x) / (std::sqrt(2.0) * sigmaPx)) + noise * normal(random)));
    return light;
}

}  // namespace

TEST_CASE("The blur of a step edge is read off its spilt light", "[sharpness]") {
    const double sigma = GENERATE(0.6, 1.0, 2.5);
    const double edge = GENERATE(-1.37, 0.0, 2.2);
    const double step = GENERATE(0.25, 0.5);
    CAPTURE(sigma, edge, step);
    // A sum stands for an integral with a kink at the edge: up to step² / (6 sigma²) / 2 too much, 6 % at the coarsest
    // here.
    CHECK(edgeSigmaPx(blurredStep(sigma, edge, step, 0.1, 0.7), step).value() == Approx(sigma).epsilon(0.06));
    CHECK(edgeSigmaPx(blurredStep(sigma, edge, step, 0.7, 0.1), step).value() == Approx(sigma).epsilon(0.06));
}

TEST_CASE("Noise leaves the blur where it is", "[sharpness]") {
    CHECK(edgeSigmaPx(blurredStep(1.5, 0.3, 0.25, 0.1, 0.7, 0.01), 0.25).value() == Approx(1.5).epsilon(0.15));
}

TEST_CASE("No edge has no blur", "[sharpness]") {
    CHECK_FALSE(edgeSigmaPx(std::vector<float>(40, 0.5F), 0.5));
    CHECK_FALSE(edgeSigmaPx(std::vector<float>{0.1F, 0.9F}, 0.5));
    CHECK_FALSE(edgeSigmaPx(blurredStep(1.0, 0.0, 0.25, 0.5, 0.52, 0.02), 0.25));
    CHECK_FALSE(edgeSigmaPx(blurredStep(1.0, 13.0, 0.25, 0.1, 0.7), 0.25));
}

TEST_CASE("Light of a code follows the sRGB curve", "[tone]") {
    // IEC 61966-2-1: linear below 0.04045, then the 2.4th power; 0 and 255 are the ends.
    const auto& light = lightFromCode();
    CHECK(light[0] == 0.0F);
    CHECK(light[255] == Approx(1.0));
    CHECK(light[10] == Approx(10.0 / 255.0 / 12.92));
    // Middle grey: code 188 carries half of the light to within a code.
    CHECK(light[187] < 0.5F);
    CHECK(light[188] > 0.5F - 0.004F);
}
