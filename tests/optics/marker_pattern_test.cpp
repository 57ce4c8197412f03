// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/marker_pattern.h"

#include <catch2/catch.hpp>

#include <opencv2/aruco.hpp>

using namespace ringrule;

TEST_CASE("a marker's cells are those that OpenCV draws") {
    struct Set {
        const char* name;
        int opencvId;
        int cells;
    };
    const auto set = GENERATE(values<Set>({{"DICT_4X4_50", cv::aruco::DICT_4X4_50, 6},
                                           {"DICT_5X5_1000", cv::aruco::DICT_5X5_1000, 7},
                                           {"DICT_7X7_250", cv::aruco::DICT_7X7_250, 9}}));
    for (const int id : {0, 7, 49}) {
        INFO(set.name << " " << id);
        const auto pattern = markerPattern(set.name, id);
        REQUIRE(pattern);
        REQUIRE(pattern->cells == set.cells);
        cv::Mat1b drawn;
        cv::aruco::drawMarker(cv::aruco::getPredefinedDictionary(set.opencvId), id, set.cells, drawn, 1);
        for (int row = 0; row < set.cells; ++row)
            for (int column = 0; column < set.cells; ++column)
                CHECK(pattern->inkAt(row, column) == (drawn(row, column) == 0));
    }
}

TEST_CASE("there is no marker beyond a dictionary") {
    CHECK_FALSE(markerPattern("DICT_4X4_50", 50));
    CHECK_FALSE(markerPattern("DICT_4X4_50", -1));
    CHECK_FALSE(markerPattern("DICT_9X9_50", 0));
    CHECK(markerCount("DICT_5X5_1000") == 1000);
    CHECK(markerCount("no dictionary") == 0);
}
