// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/husbandry/brooding_time.h"

#include <catch2/catch.hpp>

using namespace ringrule;

TEST_CASE("a published brooding time wins over the usual one") {
    // Lin & Lin 2008: 17.33 ± 2.94 days.
    const BroodingTime erectus = broodingTime("Hippocampus erectus");
    CHECK(erectus.leastDays == 11);
    CHECK(erectus.mostDays == 23);
    CHECK_FALSE(erectus.source.empty());
    const BroodingTime other = broodingTime("Hippocampus kuda");
    CHECK(other.leastDays < other.mostDays);
    CHECK(other.source == broodingTime("").source);
}
