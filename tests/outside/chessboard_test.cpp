// SPDX-License-Identifier: GPL-3.0-or-later
// The lens of OpenCV's sample photos, as published with them (data/chessboard/left_intrinsics.yml, calibrated there
// with the aspect fixed): fx = fy = 535.9, cx = 342.3, cy = 235.6. OpenCV's own tutorial with a free aspect gets 532.8.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

#include "ringrule/optics/lens_calibration.h"

using namespace ringrule;

namespace {

std::vector<BoardView> viewsOf(const Chessboard& board) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::directory_iterator(RINGRULE_SOURCE_DIR "/tests/outside/data/chessboard")) {
        if (entry.path().extension() == ".jpg") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<BoardView> views;
    for (const auto& path : paths) views.push_back(viewChessboard(loadPhoto(path), board));
    return views;
}

}  // namespace

TEST_CASE("the lens of OpenCV's chessboard photos is the published one within 1 %") {
    const auto views = viewsOf({9, 6, 25.0});
    REQUIRE(views.size() == 13);
    for (const BoardView& view : views) {
        INFO(view.path << " " << view.notFound);
        CHECK(view.seenPx.size() == 54);
        CHECK(view.blurPx > 0.3);
        CHECK(view.blurPx < 3.0);
    }
    const LensReport report = calibrateLens(views);
    for (const LensPhoto& photo : report.photos) {
        UNSCOPED_INFO(photo.path.filename() << " " << static_cast<int>(photo.state) << " " << photo.rmsPx
                                            << " px, tilt " << photo.tiltDegrees << " blur " << photo.blurPx);
    }
    INFO("coverage " << report.coverage << (report.refusal ? report.refusal->sentence : ""));
    REQUIRE(report.fitted);
    const FittedLens& fitted = *report.fitted;
    const auto& d = fitted.lens.distortion;
    INFO("RMS " << fitted.rmsPx << " sd " << fitted.focalSdPx << " " << fitted.centreSdPx << " d " << d[0] << " "
                << d[1] << " " << d[2] << " " << d[3] << " " << d[4] << " sd3 " << fitted.distortionSd[4]);
    CHECK(fitted.lens.focalXPx == Approx(535.9).epsilon(0.01));
    CHECK(fitted.lens.focalYPx == Approx(535.9).epsilon(0.01));
    CHECK(fitted.lens.centreXPx == Approx(342.3).epsilon(0.01));
    CHECK(fitted.lens.centreYPx == Approx(235.6).epsilon(0.01));
    CHECK(fitted.rmsPx < 0.3);
    CHECK(d[0] == Approx(-0.27).margin(0.03));  // published −0.266
    CHECK(fitted.focalSdPx < 2.0);
    CHECK(report.coverage > 0.6);
}
