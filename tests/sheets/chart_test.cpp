// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/chart.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "sheets/chart_marker.h"
#include "sheets/end_labels.h"

using namespace ringrule;

TEST_CASE("a numeric axis begins and ends on round ticks that hold the data") {
    const ChartAxis axis = numberAxis("mm", 13.2, 148.9, 6);
    REQUIRE(axis.ticks.size() == 4);
    CHECK(axis.low == 0.0);
    CHECK(axis.high == 150.0);
    CHECK(axis.ticks[1].label == "50");
    const ChartAxis small = numberAxis("", 0.0312, 0.0388, 6);
    CHECK(small.ticks.front().label == "0.030");
    CHECK(small.ticks.back().label == "0.040");
    CHECK(small.ticks.size() == 6);
}

TEST_CASE("a numeric axis over a single value still has a width") {
    const ChartAxis axis = numberAxis("mm", 80.0, 80.0);
    CHECK(axis.low < 80.0);
    CHECK(axis.high > 80.0);
    CHECK(axis.ticks.size() >= 2);
    const ChartAxis zero = numberAxis("mm", 0.0, 0.0);
    CHECK(zero.low < zero.high);
}

TEST_CASE("axes keep every tick inside and few enough to read, whatever the range") {
    for (double low = -3.0; low < 200.0; low = low * 1.31 + 1.7)
        for (double span = 0.001; span < 5000.0; span *= 2.3) {
            const ChartAxis axis = numberAxis("", low, low + span, 6);
            CHECK(axis.low <= low + 1e-9 * span);
            CHECK(axis.high >= low + span - 1e-9 * span);
            CHECK(axis.ticks.size() >= 2);
            CHECK(axis.ticks.size() <= 8);
            std::set<std::string> labels;
            for (const ChartTick& tick : axis.ticks) labels.insert(tick.label);
            CHECK(labels.size() == axis.ticks.size());
        }
}

TEST_CASE("a date axis puts its ticks on firsts of months and names the year once") {
    using namespace std::chrono;
    const auto number = [](sys_days day) { return static_cast<double>(day.time_since_epoch().count()); };
    const ChartAxis axis = dateAxis("Date", number(2031y / January / 12), number(2031y / September / 14));
    REQUIRE(axis.ticks.size() == 8);
    CHECK(axis.ticks.front().at == number(2031y / February / 1));
    CHECK(axis.ticks.front().label == "Feb 2031");
    CHECK(axis.ticks[1].label == "Mar");
    const ChartAxis weeks = dateAxis("Date", number(2031y / March / 1), number(2031y / March / 29));
    CHECK(weeks.ticks.front().label == "1 Mar 2031");
    CHECK(weeks.ticks[1].label == "5 Mar");
    const ChartAxis oneDay = dateAxis("Date", number(2031y / March / 1), number(2031y / March / 1));
    CHECK(oneDay.low < oneDay.high);
}

TEST_CASE("end labels are moved apart as little as can be") {
    SECTION("those that fit stay") {
        CHECK(spreadLabels({10, 40, 80}, 15, 0, 100) == std::vector<double>{10, 40, 80});
    }
    SECTION("two that collide are spread about their mean, in their own order") {
        CHECK(spreadLabels({52, 48}, 10, 0, 100) == std::vector<double>{55, 45});
    }
    SECTION("the edge pushes back") {
        CHECK(spreadLabels({99, 98}, 10, 0, 100) == std::vector<double>{100, 90});
    }
    SECTION("never nearer than the gap, never outside") {
        const std::vector<double> wanted{5, 6, 7, 50, 51, 53, 54, 97, 98, 99, 99.5, 20};
        std::vector<double> placed = spreadLabels(wanted, 7, 0, 100);
        std::sort(placed.begin(), placed.end());
        CHECK(placed.front() >= 0.0);
        CHECK(placed.back() <= 100.0);
        for (std::size_t k = 1; k < placed.size(); ++k) CHECK(placed[k] - placed[k - 1] >= 7.0 - 1e-9);
    }
    SECTION("too many are spaced evenly") {
        CHECK(spreadLabels({1, 1, 1}, 80, 0, 100) == std::vector<double>{0, 50, 100});
    }
}

TEST_CASE("forty-two series differ in colour, in marker or in both, and neighbours in both") {
    for (int a = 0; a < 42; ++a)
        for (int b = a + 1; b < 42; ++b) {
            const bool sameColour = seriesColour(a, false) == seriesColour(b, false);
            const bool sameShape = seriesMarker(a, 10.0) == seriesMarker(b, 10.0);
            CHECK_FALSE((sameColour && sameShape));
            if (b - a <= 5) {
                CHECK_FALSE(sameColour);
                CHECK_FALSE(sameShape);
            }
        }
}
