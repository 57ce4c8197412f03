// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/midline/landmarks.h"

#include <catch2/catch.hpp>

using namespace ringrule;

TEST_CASE("Names of shapes and views go round trip") {
    for (const Shape shape : {Shape::Unknown, Shape::Pipefish, Shape::Seahorse, Shape::Fish}) {
        CHECK(shapeFromName(shapeName(shape)) == shape);
    }
    for (const View view : {View::Side, View::Front, View::Above, View::Mirror})
        CHECK(viewFromName(viewName(view)) == view);
    CHECK_FALSE(shapeFromName("whale").has_value());
    CHECK_FALSE(viewFromName("").has_value());
}
