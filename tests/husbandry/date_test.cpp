// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "ringrule/husbandry/date.h"

using namespace ringrule;
using namespace std::chrono_literals;

TEST_CASE("a day goes to text and back") {
    const Date day = GENERATE(Date{2030y / 11 / 15}, Date{2032y / 2 / 29}, Date{1999y / 12 / 31}, Date{1969y / 1 / 1});
    REQUIRE(parseDate(formatDate(day)) == day);
}

TEST_CASE("a day is written as ISO 8601") {
    CHECK(formatDate(Date{2031y / 3 / 4}) == "2031-03-04");
}

TEST_CASE("the day of a time is read from its first ten characters") {
    CHECK(parseDate("2031-03-04T10:22:31") == Date{2031y / 3 / 4});
    CHECK(parseDate("2031-03-04 10:22") == Date{2031y / 3 / 4});
}

TEST_CASE("what is no day is refused") {
    const auto text = GENERATE("", "2031", "2031-3-4", "2031-02-30", "2031-13-01", "2031-00-10", "2031-01-00",
                               "2031/01/06", "20310106", "2031-01-061", "abcd-ef-gh", "-031-01-06", "2031-+1-06",
                               "2031:01:06 10:00:00", "06-01-2031");
    INFO(text);
    CHECK_FALSE(parseDate(text).has_value());
}

TEST_CASE("the leap day exists in leap years only") {
    CHECK(parseDate("2032-02-29").has_value());
    CHECK_FALSE(parseDate("2031-02-29").has_value());
    CHECK_FALSE(parseDate("2100-02-29").has_value());
}

TEST_CASE("days between dates count calendar days") {
    CHECK((*parseDate("2031-03-01") - *parseDate("2031-02-01")).count() == 28);
}
