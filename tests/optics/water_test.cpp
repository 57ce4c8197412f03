// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "ringrule/optics/water.h"

using namespace ringrule;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

}  // namespace

TEST_CASE("The index of water follows Quan & Fry 1995", "[water]") {
    // Applied Optics 34:3477–3480; the values were computed from the published formula by an independent script.
    const auto [salinity, temperature, wavelength, index] =
        GENERATE(table<double, double, double, double>({{0, 20, 589.3, 1.333004},
                                                        {0, 25, 589.3, 1.332514},
                                                        {35, 20, 589.3, 1.339406},
                                                        {35, 25, 589.3, 1.338858},
                                                        {30, 25, 589.3, 1.337952},
                                                        {33, 24, 550, 1.339988},
                                                        {35, 20, 500, 1.342969},
                                                        {0, 20, 500, 1.336445},
                                                        {35, 26, 550, 1.340119},
                                                        {35, 30, 400, 1.348734},
                                                        {0, 0, 700, 1.331115}}));
    CAPTURE(salinity, temperature, wavelength);
    // The table has six decimals.
    CHECK(waterIndex(salinity, temperature, wavelength) == Approx(index).margin(6e-7));
}

TEST_CASE("A layer bends rays by Snell's law", "[water]") {
    // Angle behind the surface for 30° and 45° in air; computed from Snell's law by an independent script.
    const auto [index, inAir, behind] = GENERATE(table<double, double, double>({{1.333, 30.0, 22.0301},
                                                                                {1.339, 30.0, 21.9263},
                                                                                {1.4917, 30.0, 19.5840},
                                                                                {1.52, 30.0, 19.2049},
                                                                                {1.34, 45.0, 31.8496}}));
    const FlatLayers layers{.airMm = 0.0, .waterMm = 1.0, .waterIndex = index};
    const double tangent = std::tan(inAir * kDegree);
    const double sideways = tangent * layers.reducedDepthMm(tangent * tangent);
    CHECK(std::atan(sideways) / kDegree == Approx(behind).margin(1e-4));
}

TEST_CASE("Near the normal depth looks divided by the index", "[water]") {
    const FlatLayers layers{
        .airMm = 400.0, .windowMm = 10.0, .windowIndex = 1.4917, .waterMm = 100.0, .waterIndex = 1.34};
    CHECK(layers.reducedDepthMm(0.0) == Approx(481.331).margin(5e-4));  // published check value, see depth bias
    const FlatLayers air{.airMm = 300.0, .windowMm = 5.0, .windowIndex = 1.0, .waterMm = 50.0, .waterIndex = 1.0};
    CHECK(air.reducedDepthMm(0.3) == Approx(355.0));
}

TEST_CASE("Lengths read off a plate behind the animal are too long by the reduced distances", "[water]") {
    // Air A, window g of index ng, water w to the animal, plate d behind it, n = 1.34: bias in %.
    const auto [air, window, windowIndex, water, behind, bias] =
        GENERATE(table<double, double, double, double, double, double>({{400, 10, 1.4917, 100, 30, 4.6513},
                                                                        {400, 10, 1.52, 100, 30, 4.6525},
                                                                        {800, 10, 1.4917, 100, 30, 2.5403},
                                                                        {300, 6, 1.52, 50, 20, 4.3736}}));
    const FlatLayers toAnimal{air, window, windowIndex, water, 1.34};
    const FlatLayers toPlate{air, window, windowIndex, water + behind, 1.34};
    CHECK(100.0 * (toPlate.reducedDepthMm(0.0) / toAnimal.reducedDepthMm(0.0) - 1.0) == Approx(bias).margin(6e-5));
}

TEST_CASE("The tangent is found again from the sideways distance", "[water]") {
    const FlatLayers layers{
        .airMm = 420.0, .windowMm = 5.0, .windowIndex = 1.4917, .waterMm = 60.0, .waterIndex = 1.3385};
    for (const double tangent : {0.0, 1e-9, 0.01, 0.3, 1.0, 5.0}) {
        const double sideways = tangent * layers.reducedDepthMm(tangent * tangent);
        CHECK(layers.tangentFromSideways(sideways) == Approx(tangent).epsilon(1e-12).margin(1e-15));
    }
}

TEST_CASE("The slope of the reduced depth is its derivative", "[water]") {
    const FlatLayers layers{
        .airMm = 420.0, .windowMm = 5.0, .windowIndex = 1.4917, .waterMm = 60.0, .waterIndex = 1.3385};
    for (const double square : {0.0, 0.05, 0.5}) {
        const double h = 1e-5;
        const double slope = (layers.reducedDepthMm(square + h) - layers.reducedDepthMm(square - h)) / (2.0 * h);
        CHECK(layers.reducedDepthSlopeMm(square) == Approx(slope).epsilon(1e-7));
    }
}

TEST_CASE("A box's layers end where the plane is", "[water]") {
    const Media media{420.0, 5.0, 1.4917, 60.0, 32.0, 24.0};
    const FlatLayers layers = layersOf(media, 8.0);
    CHECK(layers.waterMm == 52.0);
    CHECK(layers.airMm == 420.0);
    CHECK(layers.waterIndex == waterIndex(32.0, 24.0));
}
