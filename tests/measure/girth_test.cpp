// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/girth.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace ringrule;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Ramanujan's second formula against the exact perimeter") {
    struct Row {
        double a, b, exact, tolerance;
    };
    // Exact perimeters by the arithmetic-geometric mean, semi-axes a and b; the formula's own error grows with
    // flatness.
    const Row row =
        GENERATE(Row{10, 5, 48.442241103, 1e-7}, Row{2, 1, 9.688448221, 1e-8}, Row{7.5, 5, 39.663598973, 1e-8},
                 Row{6, 2.5, 27.847974686, 1e-6}, Row{12, 4, 53.459572882, 1e-5}, Row{1, 1, 2.0 * M_PI, 1e-9});
    CHECK_THAT(ellipsePerimeter(2.0 * row.a, 2.0 * row.b), WithinRel(row.exact, row.tolerance));
    CHECK(ellipsePerimeter(2.0 * row.a, 2.0 * row.b) == ellipsePerimeter(2.0 * row.b, 2.0 * row.a));
}

TEST_CASE("Girth scales with the animal and its interval with what is not known") {
    const Estimate depth{5.0, 0.05, 0.02};
    const Estimate girth = girthFromShape(depth, Shape::Pipefish);
    CHECK_THAT(girthFromShape({10.0, 0.1, 0.04}, Shape::Pipefish).value, WithinRel(2.0 * girth.value, 1e-12));
    // The usual width is not known to better than a tenth: about half of that in the perimeter.
    CHECK(girth.sdShared / girth.value > 0.03);
    const Estimate measured = girthFromWidth(depth, {4.5, 0.05, 0.018});
    CHECK_THAT(measured.value, WithinRel(ellipsePerimeter(5.0, 4.5), 1e-12));
    CHECK(measured.sd() < 0.3 * girth.sd());
    // One scale for depth and width: the shared parts add up as the perimeter does.
    CHECK_THAT(measured.sdShared / measured.value, WithinAbs(0.004, 1e-4));
}
