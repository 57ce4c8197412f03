// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "ringrule/husbandry/spells.h"

using namespace ringrule;
using namespace std::chrono_literals;

TEST_CASE("spells share the days that both have, but for the day of a move") {
    const auto day = [](unsigned n) { return Date{2031y / 3 / std::chrono::day(n)}; };
    struct Case {
        Spell one;
        Spell other;
        int shared;
    };
    const auto [one, other, shared] = GENERATE_COPY(values<Case>({
        {{day(1), day(9)}, {day(10), {}}, 0},        // a day between
        {{day(1), day(10)}, {day(10), {}}, 0},       // moved on the 10th
        {{day(1), day(11)}, {day(10), {}}, 2},       // the 10th and 11th
        {{day(10), day(10)}, {day(10), {}}, 0},      // there for a day, then moved on
        {{day(5), day(5)}, {day(1), day(10)}, 1},    // a day elsewhere without having left
        {{day(1), day(10)}, {day(1), day(10)}, 10},  // twice the same
        {{day(1), day(20)}, {day(5), day(7)}, 3},
    }));
    CHECK(sharedDays(one, other).count() == shared);
    CHECK(sharedDays(other, one).count() == shared);
    CHECK(sharedDays({day(1), {}}, {day(9), {}}) > std::chrono::years{7000});
}

TEST_CASE("a spell reads as words") {
    CHECK(spellText({Date{2031y / 1 / 6}, Date{2031y / 2 / 1}}) == "from 2031-01-06 to 2031-02-01");
    CHECK(spellText({Date{2031y / 1 / 6}, {}}) == "from 2031-01-06 on");
}
