// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/number_text.h"

#include <catch2/catch.hpp>

using namespace ringrule;

namespace {
Estimate withU95(double value, double u95) {
    return {value, u95 / 1.959963984540054, 0.0};
}
}  // namespace

TEST_CASE("the interval has two significant figures and sets the decimals") {
    CHECK(numberWithInterval(withU95(132.408, 0.623)) == "132.4 ± 0.6");
    CHECK(numberWithInterval(withU95(132.408, 3.14)) == "132 ± 3");
    CHECK(numberWithInterval(withU95(132.408, 12.3)) == "132 ± 12");
    CHECK(numberWithInterval(withU95(132.408, 34.0)) == "132 ± 34");
    CHECK(numberWithInterval(withU95(132.408, 0.193)) == "132.41 ± 0.19");
    CHECK(numberWithInterval(withU95(132.408, 0.197)) == "132.4 ± 0.2");
    CHECK(numberWithInterval(withU95(0.03557, 0.00044)) == "0.0356 ± 0.0004");
    CHECK(numberWithInterval(withU95(-4.31, 1.5), "%") == "\u22124.3 ± 1.5\u00A0%");
    CHECK(numberWithInterval(withU95(-0.001, 0.03), "mm/day") == "0.00 ± 0.03\u00A0mm/day");
}

TEST_CASE("what is not known is said, not printed as a number") {
    CHECK(numberWithInterval(Estimate{}, "mm") == "cannot tell");
}

TEST_CASE("a view lists what it can give, main measure first") {
    Measurement side;
    side.shape = Shape::Seahorse;
    CHECK(measureRows(side).front().name == "Standard length");
    CHECK(measureRows(side)[1].name == "Height");
    side.shape = Shape::Pipefish;
    CHECK(measureRows(side)[1].name == "Head length");
    Measurement above;
    above.view = View::Above;
    REQUIRE(measureRows(above).size() == 1);
    CHECK(measureRows(above).front().name == "Trunk width");
}
