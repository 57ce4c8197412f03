// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/trunk_taper.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;

namespace {

constexpr std::size_t kThickest = 60;
constexpr double kEndPx = 28.0;

/// A trunk 40 px deep that narrows by 0.35 px a station from station 60 and goes over into a tail at station 100.
double plainWidth(std::size_t i) {
    const auto x = static_cast<double>(i);
    if (i <= kThickest) return 40.0;
    if (i <= 100) return 40.0 - 0.35 * (x - 60.0);
    return 26.0 * std::exp(-(x - 100.0) / 100.0);
}

double pouchAt(std::size_t i) {
    if (i < 104 || i > 144) return 0.0;
    return 9.0 * std::pow(std::sin(M_PI * (static_cast<double>(i) - 104.0) / 40.0), 2);
}

WidthProfile profileOf(bool pouch) {
    WidthProfile profile;
    for (std::size_t i = 0; i <= 220; ++i) profile.widthPx.push_back(plainWidth(i) + (pouch ? pouchAt(i) : 0.0));
    profile.stepPx = 2.0;
    profile.lengthPx = 440.0;
    profile.greatestPx = 40.0;
    return profile;
}

}  // namespace

TEST_CASE("A trunk ends where it has narrowed, with a pouch behind or without") {
    // 28 of 40 px are reached after 12 px at 0.35 px a station.
    CHECK(trunkTaper(profileOf(false), kThickest, kEndPx).trunkEndStation == Approx(94.29).margin(0.1));
    CHECK(trunkTaper(profileOf(true), kThickest, kEndPx).trunkEndStation == Approx(94.29).margin(0.1));
}

TEST_CASE("A pouch is what bulges out of the taper, and nothing else") {
    CHECK_FALSE(trunkTaper(profileOf(false), kThickest, kEndPx).pouch());
    const TrunkTaper taper = trunkTaper(profileOf(true), kThickest, kEndPx);
    REQUIRE(taper.pouch());
    CHECK(taper.pouchFrom >= 103);
    CHECK(taper.pouchTo <= 146);
    // The bridge from below runs at most a pixel above a curve that bends by so little over 40 stations.
    for (std::size_t i = taper.pouchFrom; i <= taper.pouchTo; ++i)
        CHECK(taper.bodyWidthPx[i] == Approx(plainWidth(i)).margin(1.0));
}

TEST_CASE("Without its pouch the midline runs midway between back and taper") {
    Midline midline;
    for (std::size_t i = 0; i <= 220; ++i) {
        // Walking to the right the belly is on the left, which is up; the back lies on y = 20 + half the plain width.
        const double back = 100.0 + 0.5 * plainWidth(i);
        const double belly = 100.0 - 0.5 * plainWidth(i) - pouchAt(i);
        midline.spinePx.push_back({2.0 * static_cast<double>(i), 0.5 * (back + belly)});
        midline.leftHalfWidthPx.push_back(0.5 * (back - belly));
        midline.rightHalfWidthPx.push_back(0.5 * (back - belly));
    }
    const TrunkTaper taper = trunkTaper(profileOf(true), kThickest, kEndPx);
    const Midline body = withoutPouch(midline, taper, true);
    for (std::size_t i = 60; i <= 200; ++i) CHECK(body.spinePx[i].y == Approx(100.0).margin(1.0));
    const auto pouch = pouchOutline(midline, taper, true);
    REQUIRE(pouch.size() > 20);
    const auto highest = std::min_element(pouch.begin(), pouch.end(), [](auto a, auto b) { return a.y < b.y; });
    // At its middle the pouch reaches 9 px beyond half of the 22.3 px of body there.
    CHECK(highest->y == Approx(100.0 - 11.2 - 9.0).margin(1.0));
    CHECK(pouchOutline(midline, trunkTaper(profileOf(false), kThickest, kEndPx), true).empty());
}
