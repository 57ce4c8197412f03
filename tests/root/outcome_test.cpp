// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/outcome.h"

#include <memory>

#include <catch2/catch.hpp>

#include "ringrule/error.h"

using namespace ringrule;

TEST_CASE("an outcome holds a value or the reason why there is none") {
    const Outcome<int> five{5};
    CHECK(five.ok());
    CHECK(five.value() == 5);

    const Outcome<int> none{Refusal{"no-plate", "No scale plate was found."}};
    CHECK_FALSE(none.ok());
    CHECK(none.refusal().reason == "no-plate");
}

TEST_CASE("an outcome hands over a value that cannot be copied") {
    Outcome<std::unique_ptr<int>> held{std::make_unique<int>(7)};
    const std::unique_ptr<int> taken = std::move(held).value();
    CHECK(*taken == 7);
}

TEST_CASE("an error names its file first and keeps its kind") {
    const Error error(ErrorKind::BadPhoto, "this is not a photo", "a.jpg");
    CHECK(std::string(error.what()) == "a.jpg: this is not a photo");
    CHECK(error.kind() == ErrorKind::BadPhoto);
}
