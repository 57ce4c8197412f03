// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "records/polyline_text.h"
#include "ringrule/error.h"

using namespace ringrule;

TEST_CASE("a polyline goes to text and back, to a hundredth of a pixel") {
    const std::vector<PixelPoint> points{{0.0, -0.5}, {1234.567, 1e-7}, {3999.995, 12.3}};
    CHECK(textOfPolyline(points) == "[[0,-0.5],[1234.57,0],[4000,12.3]]");
    const auto back = polylineOfText(textOfPolyline(points));
    REQUIRE(back.size() == points.size());
    for (std::size_t i = 0; i < points.size(); ++i) CHECK(distance(back[i], points[i]) <= 0.0072);  // 0.005·√2
    CHECK(polylineOfText("[]").empty());
    CHECK(textOfPolyline({}) == "[]");
    CHECK(polylineOfText("[ [1, 2], [3, 4] ]").size() == 2);
}

TEST_CASE("what is no polyline is an error") {
    const auto text = GENERATE("", "[", "[[1]]", "[[1,2]", "[[1,2][3,4]]", "[[1,two]]", "{}", "[[1,2,3]]", "[,]");
    INFO(text);
    CHECK_THROWS_AS(polylineOfText(text), Error);
}

TEST_CASE("words and remarks go to text and back; a remark of a newer program is left out") {
    const std::vector<std::string> words{"live brine shrimp", "\"quoted\", with comma", "Krebschen ä"};
    CHECK(wordsOfText(textOfWords(words)) == words);
    CHECK_THROWS_AS(wordsOfText("no list"), Error);
    CHECK(remarksOfText(R"(["no-lens","not-yet-invented","glare"])") ==
          std::vector<Remark>{Remark::NoLens, Remark::Glare});
}
