// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

#include "../scratch_folder.h"
#include "run_program.h"
#include "samples.h"

namespace {

/// A small house: two animals, two sessions, three photos each.
void writeSmallHouse(const ScratchFolder& scratch) {
    std::ifstream in(samples::kSource / "sample_images/house.json");
    auto house = nlohmann::json::parse(in);
    const auto isOurs = [](const nlohmann::json& code) { return code == "P1" || code == "P4"; };
    const auto keepOurs = [&](const char* list, const char* field) {
        auto kept = nlohmann::json::array();
        for (const auto& row : house[list]) {
            if (isOurs(row[field])) kept.push_back(row);
        }
        house[list] = kept;
    };
    keepOurs("animals", "code");
    for (const char* list : {"stays", "diet_spells", "states", "notes"}) keepOurs(list, "animal");
    house["sessions"] = {house["sessions"][0], house["sessions"][1]};
    scratch.write("samples/house.json", house.dump());
    for (const char* day : {"2031-01-06", "2031-02-03"}) {
        std::filesystem::create_directories(scratch.path() / "samples" / day / "above");
        for (const char* name : {"P1-a_rendered.jpg", "P4-a_rendered.jpg", "above/P4-c_rendered.jpg"}) {
            std::filesystem::copy_file(samples::kSource / "sample_images" / day / name,
                                       scratch.path() / "samples" / day / name);
        }
    }
}

std::vector<std::string> demoCommand(const ScratchFolder& scratch) {
    return {"demo",
            "--samples",
            scratch / "samples",
            "--calibration",
            (samples::kSource / "calibration").string(),
            "--out",
            scratch / "out",
            "--jobs",
            "2"};
}

}  // namespace

TEST_CASE("the demo leaves a collection, charts, overlays and tables, and says where") {
    const ScratchFolder scratch;
    writeSmallHouse(scratch);
    const Ran demo = ringrule(demoCommand(scratch));
    INFO(demo.err);
    REQUIRE(demo.status == 0);
    for (const char* part : {"Session of 2031-01-06", "Session of 2031-02-03", "P4", "Who needs a look"}) {
        INFO(part);
        CHECK(demo.out.find(part) != std::string::npos);
    }
    CHECK(demo.out.find(scratch / "out") != std::string::npos);
    CHECK(filesIn(scratch / "out/collection/photos") == 6);
    CHECK(filesIn(scratch / "out/overlays/2031-01-06") == 3);
    CHECK(filesIn(scratch / "out/overlays/2031-02-03") == 3);
    CHECK(filesIn(scratch / "out/charts") >= 3);  // length and two ratios of one species
    const std::string csv = contentOf(scratch / "out/table.csv");
    CHECK(std::count(csv.begin(), csv.end(), '\n') == 5);  // a head and two animals in two sessions
    CHECK(demo.out.starts_with(contentOf(scratch / "out/table.txt")));

    const Ran second = ringrule(demoCommand(scratch));
    CHECK(second.status == 2);
    CHECK(second.err.find("--again") != std::string::npos);
    auto again = demoCommand(scratch);
    again.emplace_back("--again");
    CHECK(ringrule(again).status == 0);
    CHECK(filesIn(scratch / "out/collection/photos") == 6);

    const Ran review = ringrule({"review", "--store", scratch / "out/collection", "--on", "2031-01-31"});
    CHECK(review.status == 0);
    CHECK(review.out.starts_with("Session of 2031-01-06"));
    CHECK(ringrule({"review", "--store", scratch / "out/collection", "--on", "2030-01-31"}).status == 2);
}

TEST_CASE("a house file fills a new collection, and a session adds to it") {
    const ScratchFolder scratch;
    writeSmallHouse(scratch);
    const auto calibration = (samples::kSource / "calibration").string();
    const Ran create = ringrule(
        {"create", scratch / "house", "--house", scratch / "samples/house.json", "--calibration", calibration});
    INFO(create.err);
    REQUIRE(create.status == 0);
    CHECK(std::count(create.out.begin(), create.out.end(), '\n') == 2);  // a line a session
    CHECK(contentOf(scratch / "house/calibration/bench-box.json") == contentOf(samples::box()));
    std::filesystem::create_directories(scratch / "march");
    std::filesystem::copy_file(samples::photo("2031-03-03/P1-a_rendered.jpg"), scratch / "march/P1.jpg");
    const Ran session = ringrule(
        {"session", scratch / "march", "--store", scratch / "house", "--box", samples::box(), "--keeper", "K2"});
    INFO(session.err);
    CHECK(session.status == 0);
    CHECK(session.out.find("Session of 2031-03-03") != std::string::npos);
    const Ran review = ringrule({"review", "--store", scratch / "house"});
    CHECK(review.out.find("Session of 2031-03-03") != std::string::npos);
}

TEST_CASE("questions about judgement are answered on a measured collection, and wrong ones in one line") {
    const ScratchFolder scratch;
    writeSmallHouse(scratch);
    REQUIRE(ringrule(demoCommand(scratch)).status == 0);
    const std::string store = scratch / "out/collection";

    const Ran milestones = ringrule({"milestones", "--store", store, "--on", "2031-02-10"});
    CHECK(milestones.status == 0);
    // 150 days after both animals' hatch date in the house file, 2030-11-15.
    CHECK(milestones.out.find("P4, sexing at day 150: 2031-04-14, by its age.") != std::string::npos);

    const Ran diets = ringrule({"diets", "--store", store});
    CHECK(diets.status == 0);
    CHECK(diets.out.find("Syngnathus typhle\n") != std::string::npos);
    CHECK(diets.out.find("Cannot tell.") != std::string::npos);  // two animals in two sessions

    const Ran review = ringrule({"review", "--store", store});
    CHECK(review.out.find("Box \"bench box\": This box was not checked") != std::string::npos);

    const Ran notice = ringrule({"notice", "--animals", "5", "--groups", "40"});
    CHECK(notice.status == 0);
    CHECK(notice.out.find("An animal that stops growing: noticed by") != std::string::npos);
    for (const auto& wrong : {std::vector<std::string>{"notice", "--store", store, "--tank", "no-such-tank"},
                              {"diets", "--store", store, "--from", "yesterday"},
                              {"milestones", "--store", store, "--on", "2031-13-01"}}) {
        const Ran ran = ringrule(wrong);
        INFO(ran.err);
        CHECK(ran.status == 2);
        CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
    }
}
