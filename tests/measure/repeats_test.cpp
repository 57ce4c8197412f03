// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/measure/repeats.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Measurement side(double lengthMm, double depthMm) {
    Measurement m;
    m.shape = Shape::Pipefish;
    m.standardLengthMm = {lengthMm, 0.3, 0.2};
    m.trunkDepthMm = {depthMm, 0.03, 0.01};
    m.girthMm = {3.0 * depthMm, 0.1, 0.3};
    m.girthRatio = {3.0 * depthMm / lengthMm, 0.001, 0.003};
    m.depthRatio = {depthMm / lengthMm, 0.0004, 0.0};
    m.remarks = {Remark::WidthFromShape};
    return m;
}

Measurement above(double widthMm) {
    Measurement m;
    m.shape = Shape::Pipefish;
    m.view = View::Above;
    m.trunkWidthMm = {widthMm, 0.03, 0.01};
    return m;
}

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

}  // namespace

// Worked example computed from the formula by an independent script; no published figures behind it.
TEST_CASE("Technical error of measurement of eight pairs") {
    const std::vector<std::vector<double>> pairs{{101.2, 100.8}, {98.7, 99.1}, {110.4, 110.0}, {87.9, 88.6},
                                                 {120.1, 119.5}, {95.3, 95.6}, {105.0, 105.4}, {92.6, 92.1}};
    const Repeatability r = repeatability(pairs);
    CHECK_THAT(r.tem, WithinAbs(0.338194, 5e-7));
    CHECK_THAT(r.relativeTemPercent, WithinAbs(0.333545, 5e-7));
    CHECK_THAT(r.reliability, WithinAbs(0.998821, 5e-7));
    // 1.96 rounded: 0.937425 there.
    CHECK_THAT(r.smallestRealChange, WithinAbs(0.937425, 5e-5));
    CHECK(r.groups == 8);
    CHECK(r.readings == 16);
}

TEST_CASE("Technical error of measurement of four triples") {
    const std::vector<std::vector<double>> triples{
        {101.2, 100.8, 101.5}, {98.7, 99.1, 98.6}, {110.4, 110.0, 110.9}, {87.9, 88.6, 88.1}};
    CHECK_THAT(repeatability(triples).tem, WithinAbs(0.362859, 5e-7));
}

TEST_CASE("Single readings and no readings say nothing of repeatability") {
    const std::vector<std::vector<double>> singles{{1.0}, {2.0}};
    CHECK(repeatability(singles).groups == 0);
    CHECK(repeatability({}).tem == 0.0);
}

TEST_CASE("Repeats shrink what is random and keep what is shared") {
    const std::vector<Measurement> photos{side(100.0, 4.0), side(100.2, 4.02), side(99.8, 3.98)};
    const SessionMeasure session = combineRepeats(photos);
    CHECK_THAT(session.standardLengthMm.value, WithinRel(100.0, 1e-9));
    CHECK_THAT(session.standardLengthMm.sdRandom, WithinRel(0.3 / std::sqrt(3.0), 1e-9));
    CHECK_THAT(session.standardLengthMm.sdShared, WithinRel(0.2, 1e-9));
    CHECK(session.sidePhotos == 3);
    CHECK(session.oddOnes.empty());
    CHECK(has(session.remarks, Remark::WidthFromShape));
}

TEST_CASE("An odd photo is named and hardly counts") {
    const std::vector<Measurement> photos{side(100.0, 4.0), side(100.2, 4.02), side(110.0, 3.98)};
    const SessionMeasure session = combineRepeats(photos);
    CHECK(session.oddOnes == std::vector<std::size_t>{2});
    // A plain mean would say 103.4.
    CHECK(session.standardLengthMm.value < 100.5);
    // The scatter shows in the interval.
    CHECK(session.standardLengthMm.sdRandom > 0.3);
}

TEST_CASE("Of two photos that disagree both are named") {
    const std::vector<Measurement> photos{side(100.0, 4.0), side(104.0, 4.02)};
    CHECK(combineRepeats(photos).oddOnes == std::vector<std::size_t>{0, 1});
}

TEST_CASE("A second view gives the girth its width") {
    const std::vector<Measurement> photos{side(100.0, 4.0), above(3.0)};
    const SessionMeasure session = combineRepeats(photos);
    CHECK(session.widthPhotos == 1);
    CHECK_THAT(session.girthMm.value, WithinRel(11.0517, 1e-4));  // ellipse of diameters 4 and 3
    CHECK(session.girthMm.sd() < 0.1);
    CHECK(has(session.remarks, Remark::WidthFromSecondView));
    CHECK_FALSE(has(session.remarks, Remark::WidthFromShape));
    CHECK_THAT(session.girthRatio.value, WithinRel(session.girthMm.value / 100.0, 1e-9));
}

TEST_CASE("Nothing measured gives nothing") {
    const std::vector<Measurement> photos(2);
    const SessionMeasure session = combineRepeats(photos);
    CHECK_FALSE(session.standardLengthMm.known());
    CHECK_FALSE(session.girthMm.known());
    CHECK_FALSE(combineRepeats({}).trunkDepthMm.known());
}
