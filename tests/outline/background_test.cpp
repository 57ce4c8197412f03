// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/background.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;
using Catch::Matchers::WithinAbs;

namespace {

double lightAt(double x, double y) {
    return 0.5 + 0.1 * x - 0.05 * y - 0.06 * (x * x + y * y) + 0.02 * x * x * y;
}

/// An uneven plate with a dark body and its shadow over a fifth of it, and a bright reflection.
cv::Mat1f plate() {
    cv::Mat1f light(180, 300);
    for (int y = 0; y < light.rows; ++y) {
        for (int x = 0; x < light.cols; ++x) {
            double value = lightAt(2.0 * x / 299.0 - 1.0, 2.0 * y / 179.0 - 1.0);
            if (x > 60 && x < 240 && y > 70 && y < 110) value *= 0.15;
            if (x > 60 && x < 240 && y >= 110 && y < 125) value *= 0.75;
            if (x > 20 && x < 40 && y > 20 && y < 40) value = 1.0;
            light(y, x) = static_cast<float>(value);
        }
    }
    return light;
}

}  // namespace

TEST_CASE("The plate's light is found under animals, shadows and reflections") {
    const cv::Mat1b everywhere(180, 300, static_cast<unsigned char>(255));
    const Background background = fitBackground(plate(), everywhere);
    REQUIRE(background.fitted);
    for (int y = 5; y < 180; y += 25) {
        for (int x = 5; x < 300; x += 25) {
            const double truth = lightAt(2.0 * x / 299.0 - 1.0, 2.0 * y / 179.0 - 1.0);
            // The surface drawn is a cubic itself, so only what the rejection lets through is left: one per cent.
            CHECK_THAT(background.at(x, y) / truth, WithinAbs(1.0, 0.01));
        }
    }
}

TEST_CASE("Division leaves one where the plate is empty") {
    const cv::Mat1b everywhere(180, 300, static_cast<unsigned char>(255));
    const cv::Mat1f light = plate();
    const cv::Mat1f ratio = dividedBy(light, fitBackground(light, everywhere));
    CHECK_THAT(static_cast<double>(ratio(150, 150)), WithinAbs(1.0, 0.01));
    CHECK_THAT(static_cast<double>(ratio(90, 150)), WithinAbs(0.15, 0.01));
}

TEST_CASE("A plate with nothing usable is not fitted") {
    const cv::Mat1b nowhere(180, 300, static_cast<unsigned char>(0));
    CHECK_FALSE(fitBackground(plate(), nowhere).fitted);
}
