// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/judge/condition_index.h"

#include <catch2/catch.hpp>

#include "histories.h"

using namespace ringrule;
using namespace histories;
using Catch::Matchers::WithinAbs;

TEST_CASE("A healthy group has condition indices about 100, a thin animal's is lower by what it lost") {
    auto animals = group(7, 6);
    const std::vector<Estimate> healthy = conditionIndices(animals, session(5));
    REQUIRE(healthy.size() == 7);
    // Builds differ by up to 6 % in all, sessions by 1 %.
    for (const Estimate& index : healthy) CHECK_THAT(index.value, WithinAbs(100.0, 7.0));
    thin(animals[3], 5, 0.85);
    const std::vector<Estimate> later = conditionIndices(animals, session(5));
    // The thinned animal is no part of its own reference: 15 % off, and nothing else moves by more than the median may.
    CHECK_THAT(later[3].value / healthy[3].value, WithinAbs(0.85, 1e-6));
    CHECK(later[3].u95() > 0.5);
    CHECK_THAT(later[0].value, WithinAbs(healthy[0].value, 3.0));
    CHECK_THAT(conditionIndices(animals, session(4))[3].value, WithinAbs(100.0, 7.0));
}

TEST_CASE("Without tankmates there is no condition index") {
    CHECK_FALSE(conditionIndices(group(1, 6), session(5))[0].known());
    auto animals = group(3, 2);
    animals.push_back(animal("new", 9));
    CHECK_FALSE(conditionIndices(animals, session(1))[3].known());
}
