// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/card_sheet.h"

#include <catch2/catch.hpp>
#include <numeric>

#include "../scratch_folder.h"
#include "paper_raster.h"
#include "ringrule/error.h"

using namespace ringrule;

namespace {

template <class Run>
Error errorOf(const Run& run) {
    try {
        run();
    } catch (const Error& error) {
        return error;
    }
    FAIL("no error was thrown");
    return {ErrorKind::Stopped, ""};
}

std::vector<int> upTo(int last) {
    std::vector<int> numbers(static_cast<std::size_t>(last));
    std::iota(numbers.begin(), numbers.end(), 1);
    return numbers;
}

}  // namespace

TEST_CASE("card numbers are lists and ranges") {
    CHECK(cardNumbersIn("1-3") == std::vector<int>{1, 2, 3});
    CHECK(cardNumbersIn("7") == std::vector<int>{7});
    CHECK(cardNumbersIn("5, 1-2,999,0") == std::vector<int>{5, 1, 2, 999, 0});
    for (const char* wrong :
         {"", ",", "1,", "a", "3-1", "1000", "0-1000", "-1", "1-", "1-2-3", "1,1", "2-4,3", "1.5"}) {
        INFO(wrong);
        CHECK(errorOf([&] { (void)cardNumbersIn(wrong); }).kind() == ErrorKind::BadUse);
    }
}

TEST_CASE("names come from a table as spreadsheets write it") {
    const ScratchFolder folder;
    using Names = std::map<int, std::string>;
    const auto names = [&](const std::string& text) { return readCardNames(folder.write("names.csv", text)); };
    CHECK(names("number,name\r\n1,Juniper\r\n12,P2\r\n") == Names{{1, "Juniper"}, {12, "P2"}});
    CHECK(names("1,A\n\n2, B \n") == Names{{1, "A"}, {2, "B"}});
    CHECK(names("\xEF\xBB\xBFnumber;name\n3;\"M\xC3\xB6we, the \"\"old\"\"\"\n") ==
          Names{{3, "M\xC3\xB6we, the \"old\""}});
    for (const char* wrong : {"1,A\n1,B\n", "1,A\nx,B\n", "1,A\n2\n", "1,A\n1000,B\n"}) {
        INFO(wrong);
        const Error error = errorOf([&] { (void)names(wrong); });
        CHECK(error.kind() == ErrorKind::BadData);
        CHECK(std::string(error.what()).find("line 2") != std::string::npos);
    }
    CHECK(errorOf([&] { (void)readCardNames(folder / "none.csv"); }).kind() == ErrorKind::BadData);
    CHECK(errorOf([&] { (void)readCardNames(folder.path()); }).kind() == ErrorKind::BadData);
}

TEST_CASE("printed cards are read as their numbers, at their size") {
    const auto paper = GENERATE(Paper::A4, Paper::Letter);
    const ScratchFolder folder;
    const auto pdf = folder / "cards.pdf";
    CHECK(writeCards(upTo(12), pdf, {paper, 10.0, {{1, "Juniper"}, {2, "A name that is longer than a card"}}}) == 1);
    CHECK(raster::pagesOf(pdf) == 1);
    const auto found = raster::markersOn(raster::pageOf(pdf, 1), cv::aruco::DICT_5X5_1000);
    REQUIRE(found.size() == 12);
    for (const auto& [number, c] : found) {
        CHECK(number >= 1);
        CHECK(number <= 12);
        for (std::size_t k = 0; k < 4; ++k) CHECK(cv::norm(c[(k + 1) % 4] - c[k]) == Approx(10.0).margin(0.1));
        // Upright: the first corner is the upper left one.
        CHECK(c[0].x < c[1].x);
        CHECK(c[0].y < c[3].y);
    }
}

TEST_CASE("many cards go over several sheets") {
    const ScratchFolder folder;
    const auto pdf = folder / "cards.pdf";
    const int sheets = writeCards(upTo(60), pdf, {Paper::A4, 20.0, {}});
    CHECK(sheets > 1);
    CHECK(raster::pagesOf(pdf) == sheets);
    std::size_t cards = 0;
    for (int page = 1; page <= sheets; ++page)
        cards += raster::markersOn(raster::pageOf(pdf, page, 200), cv::aruco::DICT_5X5_1000).size();
    CHECK(cards == 60);
}

TEST_CASE("cards that cannot be are refused before anything is written") {
    const ScratchFolder folder;
    const auto pdf = folder / "cards.pdf";
    CHECK(errorOf([&] { (void)writeCards({}, pdf); }).kind() == ErrorKind::BadUse);
    CHECK(errorOf([&] { (void)writeCards({1000}, pdf); }).kind() == ErrorKind::BadUse);
    CHECK(errorOf([&] { (void)writeCards({-1}, pdf); }).kind() == ErrorKind::BadUse);
    CHECK(errorOf([&] { (void)writeCards({1}, pdf, {Paper::A4, 5.0, {}}); }).kind() == ErrorKind::BadUse);
    CHECK(errorOf([&] { (void)writeCards({1}, folder / "missing/cards.pdf"); }).kind() == ErrorKind::NoSpace);
    CHECK(filesIn(folder.path()) == 0);
}
