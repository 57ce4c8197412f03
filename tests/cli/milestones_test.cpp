// SPDX-License-Identifier: GPL-3.0-or-later
// Milestones of size and published growth, for a keeper with three young seahorses, a ruler and no camera.
#include <catch2/catch.hpp>
#include <fstream>
#include <string>
#include <vector>

#include "run_program.h"

namespace {

/// Lengths by ruler every fifteen days from day 20: 9.3 mm and 0.5 mm a day, B as usual, A 4 % smaller, C 4 % larger,
/// with errors of some tenths.
constexpr const char* kLengths =
    "animal,on_day,measure,value,u95\n"
    "A,2031-01-21,standard_length_mm,18.5,0.5\nA,2031-02-05,standard_length_mm,25.8,0.5\n"
    "A,2031-02-20,standard_length_mm,32.9,0.5\nA,2031-03-07,standard_length_mm,40.2,0.5\n"
    "B,2031-01-21,standard_length_mm,19.4,0.5\nB,2031-02-05,standard_length_mm,26.9,0.5\n"
    "B,2031-02-20,standard_length_mm,34.5,0.5\nB,2031-03-07,standard_length_mm,41.7,0.5\n"
    "C,2031-01-21,standard_length_mm,20.1,0.5\nC,2031-02-05,standard_length_mm,27.8,0.5\n"
    "C,2031-02-20,standard_length_mm,35.6,0.5\nC,2031-03-07,standard_length_mm,43.4,0.5\n";

void mustRun(const std::vector<std::string>& arguments) {
    const Ran ran = ringrule(arguments);
    INFO(ran.err);
    REQUIRE(ran.status == 0);
}

std::string lineOf(const std::string& text, const std::string& start) {
    const auto at = text.find(start);
    return at == std::string::npos ? "" : text.substr(at, text.find('\n', at) - at);
}

}  // namespace

TEST_CASE("the day of a size is told from lengths by ruler, and a tank is compared with published growth") {
    const ScratchFolder scratch;
    const std::string store = scratch / "three";
    mustRun({"create", store});
    mustRun({"add", "--store", store, "tank", "code=T1"});
    for (const std::string code : {"A", "B", "C"}) {
        mustRun({"add", "--store", store, "animal", "code=" + code, "species=Hippocampus kuda", "shape=seahorse",
                 "hatched_on=2031-01-01"});
        mustRun({"add", "--store", store, "stay", "animal=" + code, "tank=T1", "from_day=2031-01-01"});
    }
    std::ofstream(scratch / "lengths.csv") << kLengths;
    mustRun({"import", scratch / "lengths.csv", "--store", store, "--as", "hand-measure", "--write"});

    const Ran milestones = ringrule({"milestones", "--store", store});
    CHECK(milestones.status == 0);
    // B grows 0.5 mm a day from 41.7 mm on the seventh of March: 50 mm on day 16 or 17 after it, the 24th.
    const std::string line = lineOf(milestones.out, "B, next-tank at 50 mm");
    INFO(line);
    CHECK((line.find("about 2031-03-23") != std::string::npos || line.find("about 2031-03-24") != std::string::npos));
    CHECK(line.find("by the growth of its group") != std::string::npos);
    CHECK(lineOf(milestones.out, "B, sexing").find("2031-04-21") != std::string::npos);  // day 110, H. kuda

    // H. kuda grew 1.16 mm a day at these ages (Choo & Liew 2006); these grew 0.5.
    const Ran review = ringrule({"review", "--store", store});
    CHECK(review.status == 0);
    CHECK(review.out.find("tank T1: tank low") != std::string::npos);
    CHECK(review.out.find("where 1.16 is published at these ages") != std::string::npos);
}
