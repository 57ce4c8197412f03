// SPDX-License-Identifier: GPL-3.0-or-later
// lens and check as users type them.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

#include "../scratch_folder.h"
#include "run_program.h"

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

std::vector<std::string> chessboardPhotos() {
    std::vector<std::string> photos;
    for (const auto& entry : std::filesystem::directory_iterator(kSource / "tests/outside/data/chessboard")) {
        if (entry.path().extension() == ".jpg") photos.push_back(entry.path().string());
    }
    std::sort(photos.begin(), photos.end());
    return photos;
}

std::vector<std::string> lensCommand(std::vector<std::string> photos, const std::string& box,
                                     const std::vector<std::string>& more = {}) {
    photos.insert(photos.begin(), "lens");
    photos.insert(photos.end(), {"--board", "9x6", "--square-mm", "25", "--box", box});
    photos.insert(photos.end(), more.begin(), more.end());
    return photos;
}

}  // namespace

TEST_CASE("lens puts the lens of OpenCV's chessboard photos into a box file") {
    const ScratchFolder folder;
    const std::string before = contentOf(kSource / "calibration/no-lens-box.json");
    const std::string box = folder.write("box.json", before);
    const std::string chart = folder / "lens.png";
    const Ran dry = ringrule(lensCommand(chessboardPhotos(), box, {"--dry-run", "--chart", chart}));
    CHECK(dry.status == 0);
    CHECK(contentOf(chart).starts_with("\x89PNG"));
    CHECK(dry.out.find("Focal length  533") != std::string::npos);
    CHECK(contentOf(box) == before);
    const Ran made = ringrule(lensCommand(chessboardPhotos(), box));
    CHECK(made.status == 0);
    CHECK(made.err.empty());
    const auto lens = nlohmann::json::parse(contentOf(box))["lens"];
    CHECK(lens["camera_matrix"][0][0].get<double>() == Approx(535.9).epsilon(0.01));
    CHECK(lens["image_size_px"] == std::vector<int>{640, 480});
    CHECK(std::sqrt(lens["covariance"][0][0].get<double>()) == Approx(0.39).margin(0.02));  // px
    CHECK_FALSE(lens.contains("camera_model"));  // the photos have no EXIF
    CHECK(nlohmann::json::parse(contentOf(box))["plate"] == nlohmann::json::parse(before)["plate"]);
}

TEST_CASE("photos that tell no lens are status 1 and leave the box file alone") {
    const ScratchFolder folder;
    const std::string before = contentOf(kSource / "calibration/bench-box.json");
    const std::string box = folder.write("box.json", before);
    auto photos = chessboardPhotos();
    photos.resize(4);
    photos.push_back(folder.write("none.jpg", "no photo"));
    const Ran few = ringrule(lensCommand(photos, box));
    CHECK(few.status == 1);
    CHECK(few.err.find("none.jpg") != std::string::npos);
    CHECK(few.err.find("at least 5 are needed") != std::string::npos);
    CHECK(contentOf(box) == before);
}

TEST_CASE("check tells that the demo's box holds, and that another box file does not") {
    const std::string photo = (kSource / "sample_images/2031-01-06/P1-a_rendered.jpg").string();
    const std::string box = (kSource / "calibration/bench-box.json").string();
    const Ran plate = ringrule({"check", photo, "--box", box});
    CHECK(plate.status == 0);
    CHECK(plate.out.find("8 of 8 markers") != std::string::npos);
    CHECK(plate.err.empty());
    const Ran rod = ringrule({"check", photo, "--box", box, "--rod-mm", "100"});
    CHECK(rod.status == 1);

    const ScratchFolder folder;
    auto moved = nlohmann::json::parse(contentOf(box));
    moved["media"]["camera_to_window_mm"] = 470;
    const Ran off = ringrule({"check", photo, "--box", folder.write("moved.json", moved.dump()).string()});
    CHECK(off.status == 1);
    CHECK(off.out.find("box file says 470 mm") != std::string::npos);
}

TEST_CASE("wrong use of lens and check is status 2") {
    const std::string box = (kSource / "calibration/bench-box.json").string();
    const auto arguments = GENERATE_COPY(values<std::vector<std::string>>({
        {"lens", "a.jpg"},
        {"lens", "a.jpg", "--box", "missing.json"},
        {"lens", "a.jpg", "--box", box, "--board", "9x6"},
        {"lens", "a.jpg", "--box", box, "--board", "9by6", "--square-mm", "25"},
        {"lens", "a.jpg", "--box", box, "--board", "2x6", "--square-mm", "25"},
        {"lens", "a.jpg", "--box", box, "--square-mm", "25"},
        {"check", "--box", box},
        {"check", "a.jpg", "--box", "missing.json"},
        {"check", "a.jpg", "--box", box, "--rod-mm", "0"},
        {"check", "a.jpg", "--box", box, "--flat"},
    }));
    const Ran ran = ringrule(arguments);
    INFO(arguments[0] << " " << ran.out);
    CHECK(ran.status == 2);
    CHECK_FALSE(ran.err.empty());
    CHECK(ringrule({"check", "missing.jpg", "--box", box}).status == 1);
}

TEST_CASE("lens and check have a help that names their options") {
    const Ran lens = ringrule({"lens", "--help"}), check = ringrule({"check", "--help"});
    CHECK(lens.status == 0);
    CHECK(check.status == 0);
    for (const char* option : {"--box", "--board", "--square-mm", "--dry-run"})
        CHECK(lens.out.find(option) != std::string::npos);
    for (const char* option : {"--box", "--rod-mm", "--flat"}) CHECK(check.out.find(option) != std::string::npos);
}
