// SPDX-License-Identifier: GPL-3.0-or-later
// box setup, box water, box plane and kept checks as users type them.
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "box_file.h"
#include "rod_photo.h"
#include "run_program.h"

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

}  // namespace

TEST_CASE("box setup begins with the plate and ends with the rod") {
    const ScratchFolder folder;
    const Ran none = ringrule({"box", "setup"});
    CHECK(none.status == 1);
    CHECK(none.out.find("Next: Print the plate.") != std::string::npos);

    const std::string box = folder / "bay3.json";
    REQUIRE(ringrule({"plate", "--size", "bench", "--pdf", folder / "p.pdf", "--box", box}).status == 0);
    CHECK(ringrule({"box", "setup", "--box", box}).out.find("Next: Steel rule.") != std::string::npos);
    REQUIRE(ringrule({"box", "rescale", "--box", box, "--bar-stated", "200", "--bar-measured", "199"}).status == 0);
    const Ran ruled = ringrule({"box", "setup", "--box", box});
    CHECK(ruled.out.find("Printed at 99.50 % across") != std::string::npos);
    CHECK(ruled.out.find("Next: Lens photos.") != std::string::npos);
    REQUIRE(ringrule({"box", "water", "--box", box, "--camera-to-window-mm", "420", "--window-mm", "5",
                      "--water-to-plate-mm", "60", "--salinity-ppt", "32", "--temperature-c", "24"})
                .status == 0);
    REQUIRE(ringrule({"box", "plane", "--box", box, "--distance-mm", "8", "--tolerance-mm", "2"}).status == 0);
    const auto json = nlohmann::json::parse(contentOf(box));
    CHECK(json["media"]["window_index"] == 1.49);
    CHECK(json["animal_plane"]["tolerance_mm"] == 2.0);
    const Ran after = ringrule({"box", "setup", "--box", box});
    CHECK(after.status == 1);
    CHECK(after.out.find("4 [done]") != std::string::npos);
    CHECK(after.out.find("5 [done]") != std::string::npos);
    CHECK(after.out.find("6 [to do]") != std::string::npos);
}

TEST_CASE("a box is set up from plate to rod, and what the rod shows wrong is mended") {
    const ScratchFolder folder;
    const std::string box = folder / "bay3.json", store = folder / "house", rod = folder / "rod.jpg";
    REQUIRE(ringrule({"create", store}).status == 0);
    REQUIRE(ringrule({"plate", "--size", "bench", "--pdf", folder / "p.pdf", "--box", box}).status == 0);
    // Typed without looking: the printer made it 97 %.
    REQUIRE(ringrule({"box", "rescale", "--box", box, "--bar-stated", "200", "--bar-measured", "200"}).status == 0);
    std::vector<std::string> lens{"lens", "--board", "9x6", "--square-mm", "25", "--box", box};
    for (const auto& entry : std::filesystem::directory_iterator(kSource / "tests/outside/data/chessboard"))
        if (entry.path().extension() == ".jpg") lens.push_back(entry.path().string());
    REQUIRE(ringrule(lens).status == 0);
    REQUIRE(ringrule({"box", "water", "--box", box, "--camera-to-window-mm", "135", "--window-mm", "5",
                      "--water-to-plate-mm", "60", "--salinity-ppt", "32", "--temperature-c", "24"})
                .status == 0);
    REQUIRE(ringrule({"box", "plane", "--box", box, "--distance-mm", "8", "--tolerance-mm", "2"}).status == 0);
    const std::vector<std::string> setup{"box", "setup", "--box", box, "--store", store};
    CHECK(ringrule(setup).out.find("Next: Rod check.") != std::string::npos);

    render::RodScene scene;
    scene.box = render::readBox(box);
    scene.printScale = 0.97;
    scene.fromMm = {47.0, 57.0};
    scene.toMm = {147.0, 57.0};
    scene.widthMm = 6.0;
    scene.camera.aimMm = {97.0, 58.0};
    render::photographRod(scene, rod);
    const std::vector<std::string> check{"check", rod, "--box", box, "--rod-mm", "100", "--flat", "--store", store};
    CHECK(ringrule(check).status == 1);
    const Ran wrong = ringrule(setup);
    CHECK(wrong.status == 1);
    CHECK(wrong.out.find("6 [wrong]") != std::string::npos);
    CHECK(wrong.out.find("Type: ringrule check") != std::string::npos);

    REQUIRE(ringrule({"box", "rescale", "--box", box, "--bar-stated", "200", "--bar-measured", "194"}).status == 0);
    CHECK(ringrule(setup).out.find("6 [to do]") != std::string::npos);
    CHECK(ringrule(check).status == 0);
    const Ran done = ringrule(setup);
    CHECK(done.status == 0);
    CHECK(done.out.find("Next:") == std::string::npos);
}

TEST_CASE("box setup judges a photo, and a kept check is remembered") {
    const ScratchFolder folder;
    const std::string photo = (kSource / "sample_images/2031-01-06/P1-a_rendered.jpg").string();
    auto moved = nlohmann::json::parse(contentOf(kSource / "calibration/bench-box.json"));
    moved["media"]["camera_to_window_mm"] = 470;
    const std::string box = folder.write("moved.json", moved.dump()).string();
    const Ran now = ringrule({"box", "setup", "--box", box, "--check", photo, "--on", "2031-01-06"});
    CHECK(now.status == 1);
    CHECK(now.out.find("4 [wrong]") != std::string::npos);
    CHECK(now.out.find("box file says 470 mm") != std::string::npos);

    const std::string store = folder / "collection";
    REQUIRE(ringrule({"create", store}).status == 0);
    CHECK(ringrule({"check", photo, "--box", box, "--store", store, "--keeper", "K1"}).status == 1);
    const Ran kept = ringrule({"box", "setup", "--box", box, "--store", store, "--on", "2031-01-07"});
    CHECK(kept.out.find("4 [wrong]") != std::string::npos);
    CHECK(kept.out.find("box file says 470 mm") != std::string::npos);
    // What was found later does not count on an earlier day.
    CHECK(ringrule({"box", "setup", "--box", box, "--store", store, "--on", "2031-01-05"}).out.find("[wrong]") ==
          std::string::npos);
}

TEST_CASE("wrong use of the box commands is status 2 and leaves the file alone") {
    const ScratchFolder folder;
    const std::string before = contentOf(kSource / "calibration/bench-box.json");
    const std::string box = folder.write("box.json", before).string();
    const auto arguments = GENERATE_COPY(values<std::vector<std::string>>({
        {"box"},
        {"box", "setup", "--store", "x"},
        {"box", "setup", "--box", "missing.json"},
        {"box", "setup", "--box", box, "--on", "soon"},
        {"box", "setup", "--box", box, "--rod-mm", "100"},
        {"box", "plane", "--box", box, "--distance-mm", "-3", "--tolerance-mm", "1"},
        {"box", "plane", "--box", box, "--distance-mm", "61", "--tolerance-mm", "1"},
        {"box", "water", "--box", box, "--camera-to-window-mm", "420", "--window-mm", "-5", "--water-to-plate-mm", "60",
         "--salinity-ppt", "32", "--temperature-c", "24"},
        {"box", "water", "--box", box, "--camera-to-window-mm", "420", "--window-mm", "5", "--window-index", "0.9",
         "--water-to-plate-mm", "60", "--salinity-ppt", "32", "--temperature-c", "24"},
    }));
    const Ran ran = ringrule(arguments);
    INFO(arguments[1 % arguments.size()] << " " << ran.out);
    CHECK(ran.status == 2);
    CHECK_FALSE(ran.err.empty());
    CHECK(contentOf(box) == before);
}
