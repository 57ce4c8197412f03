// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "ringrule/imaging/exposure.h"

using namespace ringrule;

TEST_CASE("Exposure counts what is clipped and where the codes lie", "[exposure]") {
    cv::Mat1b grey(10, 10, std::uint8_t{100});
    grey.row(0) = 255;
    grey.row(1) = 0;
    grey(1, 9) = 2;
    const Exposure all = exposureOf(grey);
    CHECK(all.clippedLight == Approx(0.10));
    CHECK(all.clippedDark == Approx(0.09));
    CHECK(all.darkCode == 0.0);
    CHECK(all.middleCode == 100.0);
    CHECK(all.lightCode == 255.0);
}

TEST_CASE("Exposure of a mask looks at nothing else", "[exposure]") {
    cv::Mat1b grey(4, 4, std::uint8_t{255}), mask(4, 4, std::uint8_t{0});
    grey(2, 3) = 40;
    mask(2, 3) = 1;
    CHECK(exposureOf(grey, mask).clippedLight == 0.0);
    CHECK(exposureOf(grey, mask).middleCode == 40.0);
    CHECK(exposureOf(grey, cv::Mat1b::zeros(4, 4)).middleCode == 0.0);
}
