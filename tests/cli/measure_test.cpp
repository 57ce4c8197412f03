// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cmath>

#include "../scratch_folder.h"
#include "run_program.h"
#include "samples.h"

namespace {

constexpr const char* kDay = "2031-01-06";

std::string sample(const std::string& name) {
    return (samples::kSource / "sample_images" / kDay / name).string();
}

}  // namespace

TEST_CASE("a line has the keys of the format, in its order") {
    const Ran ran = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", samples::box()});
    REQUIRE(ran.status == 0);
    REQUIRE(ran.lines().size() == 1);
    const auto line = ran.lines()[0];
    const std::vector<std::string> expected{"format",
                                            "photo",
                                            "box",
                                            "animal_index",
                                            "card",
                                            "view",
                                            "measured",
                                            "shape",
                                            "protocol",
                                            "standard_length_mm",
                                            "height_mm",
                                            "trunk_width_mm",
                                            "head_length_mm",
                                            "trunk_length_mm",
                                            "tail_length_mm",
                                            "trunk_depth_mm",
                                            "girth_mm",
                                            "girth_ratio",
                                            "depth_ratio",
                                            "belly_hollow",
                                            "landmarks_px",
                                            "taken_at",
                                            "remarks"};
    std::vector<std::string> keys;
    for (const auto& item : line.items()) keys.push_back(item.key());
    CHECK(keys == expected);
    std::vector<std::string> landmarks;
    for (const auto& item : line["landmarks_px"].items()) landmarks.push_back(item.key());
    CHECK(landmarks == std::vector<std::string>{"snout_tip", "coronet", "head_end", "trunk_end", "tail_end"});
    CHECK(line["format"] == "ringrule-measure/1");
    CHECK(line["photo"] == sample("P1-a_rendered.jpg"));
    CHECK(line["box"] == "bench box");
    CHECK(line["animal_index"] == 0);
    CHECK(line["view"] == "side");
    CHECK(line["measured"] == true);
    CHECK(line["protocol"] == "dawson-1985");
    CHECK(line["landmarks_px"]["coronet"].is_null());
    CHECK(line["height_mm"].is_null());
}

TEST_CASE("values agree with the truth of the rendered photo") {
    const auto truth = samples::truth(kDay, "P1-a_rendered");
    const auto line = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", samples::box()}).lines().at(0);
    CHECK(line["card"] == truth["card"]);
    CHECK(line["shape"] == truth["shape"]);
    CHECK(line["taken_at"] == truth["taken_at"]);
    // The box's depth tolerance alone lets a length be 0.4 % off; 1 % is what the demo promises of every pipefish.
    const double length = truth["standard_length_mm"];
    CHECK(line["standard_length_mm"]["value"].get<double>() == Approx(length).epsilon(0.01));
    CHECK(line["standard_length_mm"]["u95"].get<double>() > 0.0);
    CHECK(line["standard_length_mm"]["u95"].get<double>() < 0.03 * length);
    // Depth is a few millimetres seen by an edge that is uncertain by a few hundredths: 4 %.
    CHECK(line["trunk_depth_mm"]["value"].get<double>() == Approx(truth["trunk_depth_mm"].get<double>()).epsilon(0.04));
    CHECK(line["depth_ratio"]["value"].get<double>() == Approx(truth["depth_ratio"].get<double>()).epsilon(0.05));
    for (const char* tip : {"snout_tip", "tail_end"}) {
        INFO(tip);
        const double dx = line["landmarks_px"][tip][0].get<double>() - truth["landmarks_px"][tip][0].get<double>();
        const double dy = line["landmarks_px"][tip][1].get<double>() - truth["landmarks_px"][tip][1].get<double>();
        const double lengthPx = std::hypot(
            truth["landmarks_px"]["snout_tip"][0].get<double>() - truth["landmarks_px"]["tail_end"][0].get<double>(),
            truth["landmarks_px"]["snout_tip"][1].get<double>() - truth["landmarks_px"]["tail_end"][1].get<double>());
        CHECK(std::hypot(dx, dy) < 0.01 * lengthPx);
    }
}

TEST_CASE("lines come in the order of the photos, the same on one thread and on two") {
    const std::vector<std::string> photos{sample("P3-a_rendered.jpg"), sample("P1-a_rendered.jpg"),
                                          sample("P2-b_rendered.jpg"), sample("P1-b_rendered.jpg")};
    std::vector<std::string> one{"measure"};
    one.insert(one.end(), photos.begin(), photos.end());
    for (const std::string& word : {std::string("--box"), samples::box(), std::string("--jobs"), std::string("1")}) {
        one.push_back(word);
    }
    std::vector<std::string> two = one;
    two.back() = std::string("2");
    const Ran first = ringrule(one);
    const Ran second = ringrule(two);
    REQUIRE(first.lines().size() == photos.size());
    for (std::size_t i = 0; i < photos.size(); ++i) CHECK(first.lines()[i]["photo"] == photos[i]);
    CHECK(first.out == second.out);
}

TEST_CASE("the outline is printed on request only") {
    const Ran ran = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", samples::box(), "--outline"});
    const auto line = ran.lines().at(0);
    REQUIRE(line.contains("outline_px"));
    CHECK(line["outline_px"].size() > 100);
    CHECK(line["outline_px"][0].size() == 2);
}

TEST_CASE("the view is told by the folder, or by the option") {
    const std::string above = sample("above/P1-c_rendered.jpg");
    const auto byFolder = ringrule({"measure", above, "--box", samples::box()}).lines().at(0);
    CHECK(byFolder["view"] == "above");
    const auto truth = samples::truth(kDay, "P1-c_rendered");
    // A trunk of four millimetres in a photo of ten pixels a millimetre: half a pixel on each side is 2.5 %.
    CHECK(byFolder["trunk_width_mm"]["value"].get<double>() ==
          Approx(truth["trunk_width_mm"].get<double>()).epsilon(0.05));
    CHECK(ringrule({"measure", above, "--box", samples::box(), "--view", "front"}).lines().at(0)["view"] == "front");
}

TEST_CASE("a folder stands for its photos") {
    const ScratchFolder scratch;
    for (const char* name : {"P2-a_rendered.jpg", "P1-a_rendered.jpg"}) {
        std::filesystem::copy_file(sample(name), scratch / name);
    }
    const auto lines = ringrule({"measure", scratch.path().string(), "--box", samples::box()}).lines();
    REQUIRE(lines.size() == 2);
    CHECK(lines[0]["photo"] == (scratch / "P1-a_rendered.jpg").string());
}

TEST_CASE("overlays are pictures in a folder made for them") {
    const ScratchFolder scratch;
    const Ran ran = ringrule({"measure", sample("P1-a_rendered.jpg"), sample("P1-b_rendered.jpg"), "--box",
                              samples::box(), "--overlay", scratch / "new/overlays"});
    CHECK(ran.status == 0);
    REQUIRE(std::filesystem::is_directory(scratch / "new/overlays"));
    CHECK(filesIn(scratch / "new/overlays") == 2);
    CHECK(contentOf(scratch / "new/overlays/P1-a_rendered_overlay.png").starts_with("\x89PNG"));
}

TEST_CASE("a box without a lens says so and widens the interval") {
    const auto bare = (samples::kSource / "calibration/no-lens-box.json").string();
    const auto with = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", samples::box()}).lines().at(0);
    const auto without = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", bare}).lines().at(0);
    const auto& remarks = without["remarks"];
    CHECK(std::find(remarks.begin(), remarks.end(), "no-lens") != remarks.end());
    CHECK(without["standard_length_mm"]["u95"].get<double>() > with["standard_length_mm"]["u95"].get<double>());
}

TEST_CASE("an interrupt stops a run between photos with status 130") {
    const Ran ran = ringrule(
        {"measure", (samples::kSource / "sample_images" / kDay).string(), "--box", samples::box(), "--jobs", "1"},
        {true, ""});
    CHECK(ran.status == 130);
    CHECK(ran.err.find("stopped") != std::string::npos);
    CHECK(ran.lines().size() < 31);  // the session has 31 photos; each line is whole
}

TEST_CASE("results that cannot be written are an error") {
    if (!std::filesystem::exists("/dev/full")) return;
    const Ran ran = ringrule({"measure", sample("P1-a_rendered.jpg"), "--box", samples::box()}, {false, "/dev/full"});
    CHECK(ran.status == 2);
    CHECK(ran.err.find("standard output") != std::string::npos);
}
