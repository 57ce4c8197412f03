// SPDX-License-Identifier: GPL-3.0-or-later
// Drawn photos of the plate with a round steel rod before it, as files.
#include "ringrule/workflow/check_box.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include <opencv2/imgcodecs.hpp>

#include "../optics/drawn_box.h"
#include "../scratch_folder.h"

using namespace ringrule;

namespace {

struct Rod {
    cv::Point2d from;
    cv::Point2d to;
    double thicknessMm = 3.0;
    double heightMm = 8.0;
};

// Share of a pixel that a round rod hides: each of its slices parallel to the plate is a strip.
double hidden(const drawn::Camera& camera, const cv::Matx33d& turn, const Rod& rod, cv::Point2d px) {
    const cv::Point2d along = (rod.to - rod.from) * (1.0 / cv::norm(rod.to - rod.from));
    const cv::Point2d middle = camera.planeFromPx(px, rod.heightMm, turn) - rod.from;
    if (std::abs(along.x * middle.y - along.y * middle.x) > rod.thicknessMm) return 0.0;  // most pixels
    int hits = 0;
    for (int j = 0; j < 4; ++j)
        for (int i = 0; i < 4; ++i) {
            const cv::Point2d at = px + cv::Point2d(0.25 * i - 0.375, 0.25 * j - 0.375);
            bool hit = false;
            for (int slice = 0; slice <= 8 && !hit; ++slice) {
                const double angle = CV_PI * slice / 8.0, radius = 0.5 * rod.thicknessMm;
                const cv::Point2d d = camera.planeFromPx(at, rod.heightMm + radius * std::cos(angle), turn) - rod.from;
                const double s = d.dot(along), t = along.x * d.y - along.y * d.x;
                hit = s >= 0.0 && s <= cv::norm(rod.to - rod.from) && std::abs(t) <= radius * std::sin(angle);
            }
            hits += hit ? 1 : 0;
        }
    return hits / 16.0;
}

std::filesystem::path photographed(const ScratchFolder& folder, const drawn::Camera& camera, const Box& box,
                                   const std::optional<Rod>& rod, double printScale = 1.0) {
    drawn::Picture picture;
    picture.noise = 1.5;
    cv::Mat1b grey = drawn::photograph(camera, drawn::markersOf(box, printScale), picture).grey;
    if (rod) {
        const cv::Matx33d turn = camera.rotation();
        const cv::Point2d a = camera.pxFromPlane(rod->from, rod->heightMm),
                          b = camera.pxFromPlane(rod->to, rod->heightMm);
        std::vector<cv::Point2f> ends{a, b};
        cv::Rect around = cv::boundingRect(ends);
        around = cv::Rect(around.x - 60, around.y - 60, around.width + 120, around.height + 120) &
                 cv::Rect({0, 0}, grey.size());
        cv::Mat1f cover(around.size());
        for (int y = 0; y < around.height; ++y)
            for (int x = 0; x < around.width; ++x)
                cover(y, x) = static_cast<float>(hidden(camera, turn, *rod, {x + around.x + 0.0, y + around.y + 0.0}));
        cv::GaussianBlur(cover, cover, {}, 0.8);
        // Cover is a share of light; the photo is in code values of a power of about 2.2.
        for (int y = 0; y < around.height; ++y)
            for (int x = 0; x < around.width; ++x) {
                auto& code = grey(y + around.y, x + around.x);
                const double light = std::pow(code / 255.0, 2.2) * (1.0 - cover(y, x)) + 0.02 * cover(y, x);
                code = cv::saturate_cast<unsigned char>(255.0 * std::pow(light, 1.0 / 2.2));
            }
    }
    const auto path = folder / "check.png";
    REQUIRE(cv::imwrite(path.string(), grey));
    return path;
}

}  // namespace

TEST_CASE("one photo of a rod tells that the box measures true", "[check-box]") {
    const ScratchFolder folder;
    const Box box = drawn::benchBox();
    drawn::Camera camera = drawn::benchCamera(box);
    camera.turnRadians = {0.05, -0.04, 0.02};
    camera = drawn::aimedAt(camera, {100.0, 60.0});
    const Rod rod{{52.0, 46.0}, {52.0 + 96.0, 46.0 + 28.0}};
    BoxCheckOptions options;
    options.rodMm = 100.0;
    const BoxCheck check = checkBox(photographed(folder, camera, box, rod), box, options);
    INFO((check.refusal ? check.refusal->sentence : ""));
    REQUIRE(check.rod);
    INFO("read " << check.rod->reading.lengthMm.value << " +- " << check.rod->reading.lengthMm.u95() << " thick "
                 << check.rod->reading.thicknessMm);
    CHECK(check.holds());
    CHECK(check.rod->reading.lengthMm.value == Approx(100.0).margin(0.1));
    CHECK(check.rod->reading.thicknessMm == Approx(3.0).margin(0.1));
    CHECK(check.rod->trueWithin < 0.002);
}

TEST_CASE("the plate alone is checked, and a rod that is not there is missed", "[check-box]") {
    const ScratchFolder folder;
    const Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::aimedAt(drawn::benchCamera(box), {100.0, 60.0});
    const auto photo = photographed(folder, camera, box, std::nullopt);
    const BoxCheck alone = checkBox(photo, box);
    CHECK(alone.holds());
    CHECK_FALSE(alone.rod);
    BoxCheckOptions options;
    options.rodMm = 100.0;
    const BoxCheck missed = checkBox(photo, box, options);
    CHECK_FALSE(missed.holds());
    REQUIRE(missed.refusal);
    CHECK(missed.refusal->reason == "no-rod");
    Box other = box;
    other.plate.dictionary = "DICT_6X6_50";
    const BoxCheck none = checkBox(photo, other);
    CHECK_FALSE(none.holds());
    CHECK_FALSE(none.plate);
}

TEST_CASE("a plate printed at 97 % is found by the rod", "[check-box]") {
    const ScratchFolder folder;
    const Box box = drawn::benchBox();
    const drawn::Camera camera = drawn::aimedAt(drawn::benchCamera(box), {97.0, 58.2});
    BoxCheckOptions options;
    options.rodMm = 100.0;
    const BoxCheck check =
        checkBox(photographed(folder, camera, box, Rod{{47.0, 58.0}, {147.0, 58.0}}, 0.97), box, options);
    REQUIRE(check.rod);
    CHECK_FALSE(check.holds());
    CHECK(check.rod->relativeError == Approx(0.031).margin(0.002));
    REQUIRE(check.rod->finding);
    // What the printer made of the plate is what a wrong rod points to first.
    CHECK(check.rod->finding->fault == BoxFault::LengthOff);
    CHECK(check.rod->finding->sentence.find("print") != std::string::npos);
}
