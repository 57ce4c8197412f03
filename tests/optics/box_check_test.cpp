// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/box_check.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "drawn_box.h"

using namespace ringrule;

namespace {

// The plate as a perfect detector finds it.
FoundPlate seenPlate(const drawn::Camera& camera, const std::vector<drawn::PrintedMarker>& printed, int expected) {
    const auto px = [&camera](cv::Point2d mm) {
        const cv::Point2d at = camera.pxFromPlane(mm, 0.0);
        return PixelPoint{at.x, at.y};
    };
    FoundPlate plate;
    plate.expectedMarkers = expected;
    for (const auto& m : printed) {
        const double h = 0.5 * m.sideMm;
        plate.markers.push_back({m.id,
                                 {px(m.centreMm + cv::Point2d(-h, -h)), px(m.centreMm + cv::Point2d(h, -h)),
                                  px(m.centreMm + cv::Point2d(h, h)), px(m.centreMm + cv::Point2d(-h, h))}});
    }
    plate.cornersPx = {px({0, 0}), px({200, 0}), px({200, 120}), px({0, 120})};
    return plate;
}

struct Seen {
    Box box = drawn::benchBox();
    drawn::Camera camera = drawn::aimedAt(drawn::benchCamera(box), {100.0, 60.0});
    std::vector<drawn::PrintedMarker> printed = drawn::markersOf(box);

    [[nodiscard]] FoundPlate plate() const { return seenPlate(camera, printed, 8); }
    [[nodiscard]] Scale scale() const {
        const auto scale = Scale::fromPlate(box, plate(), camera.lens.imageWidthPx, camera.lens.imageHeightPx);
        REQUIRE(scale);
        return scale.value();
    }
    [[nodiscard]] PlateCheck check() const { return checkPlate(box, plate(), scale()); }
};

std::vector<std::string> faultsOf(const PlateCheck& check) {
    std::vector<std::string> faults;
    for (const BoxFinding& finding : check.findings) faults.emplace_back(boxFaultId(finding.fault));
    return faults;
}

// The silhouette of a rod in steps of a pixel: a strip for a flat rod; for a round one the hull of its slices, each as
// far before or behind the animal's plane as it lies on the rod.
std::vector<PixelPoint> outlineOf(const drawn::Camera& camera, cv::Point2d from, cv::Point2d to, double thicknessMm,
                                  double heightMm, bool round) {
    const cv::Point2d along = (to - from) * (1.0 / cv::norm(to - from)), across(-along.y, along.x);
    std::vector<cv::Point2f> corners;
    const int slices = round ? 40 : 0;
    for (int i = 0; i <= slices; ++i) {
        const double angle = CV_PI * (slices > 0 ? static_cast<double>(i) / slices : 0.5);
        const double half = 0.5 * thicknessMm * std::sin(angle);
        const double height = heightMm + (round ? 0.5 * thicknessMm * std::cos(angle) : 0.0);
        for (const cv::Point2d end : {from, to})
            for (const double side : {-1.0, 1.0})
                corners.emplace_back(camera.pxFromPlane(end + side * half * across, height));
    }
    std::vector<cv::Point2f> hull;
    cv::convexHull(corners, hull);
    std::vector<PixelPoint> boundary;
    for (std::size_t k = 0; k < hull.size(); ++k) {
        const cv::Point2d a = hull[k], b = hull[(k + 1) % hull.size()];
        const int steps = std::max(1, static_cast<int>(cv::norm(b - a)));
        for (int i = 0; i < steps; ++i) {
            const cv::Point2d p = a + (b - a) * (static_cast<double>(i) / steps);
            boundary.push_back({p.x, p.y});
        }
    }
    return boundary;
}

}  // namespace

TEST_CASE("a box that is as its file says holds", "[box-check]") {
    const PlateCheck check = Seen().check();
    CHECK(check.holds());
    CHECK(check.findings.empty());
    CHECK(check.markers.size() == 8);
    CHECK(check.cornerRmsPx < 0.01);
    CHECK(check.tiltDegrees.value() < 1.0);
    CHECK(check.cameraToWindowMm.value() == Approx(420.0).epsilon(0.001));
    CHECK_FALSE(PlateCheck{}.holds());  // never filled in
}

TEST_CASE("what is wrong with a box is named", "[box-check]") {
    Seen seen;
    SECTION("a camera moved back by 6 %") {
        seen.camera.airMm *= 1.06;
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"distance-off"});
        CHECK_FALSE(check.holds());
        CHECK(check.findings[0].sentence.find("445 mm") != std::string::npos);
    }
    SECTION("a rule's slip of 2 % is none") {
        seen.camera.airMm *= 1.02;
        CHECK(seen.check().holds());
    }
    SECTION("a plate printed at 94 % looks farther away") {
        seen.printed = drawn::markersOf(seen.box, 0.94);
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"distance-off"});
        CHECK(check.findings[0].sentence.find("steel rule") != std::string::npos);
    }
    SECTION("a marker a quarter of a millimetre off") {
        seen.printed[5].centreMm += cv::Point2d(0.2, -0.15);
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"marker-off"});
        CHECK(check.findings[0].sentence.find("Marker 5") != std::string::npos);
    }
    SECTION("a print that is unequal across and down") {
        for (auto& marker : seen.printed) marker.centreMm.y *= 1.004;
        const auto faults = faultsOf(seen.check());
        CHECK(std::find(faults.begin(), faults.end(), "plate-uneven") != faults.end());
    }
    SECTION("a plate that no scale fits") {
        seen.printed[2].centreMm += cv::Point2d(0.9, 0.5);
        const auto misfit = [&seen] { return checkMisfit(seen.box, seen.plate(), 2000, 1500); };
        CHECK_FALSE(Scale::fromPlate(seen.box, seen.plate(), 2000, 1500));
        CHECK(faultsOf(misfit()) == std::vector<std::string>{"marker-off"});
        CHECK(misfit().findings[0].sentence.find("Marker 2 lies 1.0") != std::string::npos);
        seen.printed[7].centreMm += cv::Point2d(0.0, 0.9);
        CHECK(faultsOf(misfit()) == std::vector<std::string>{"plate-uneven"});
        CHECK_FALSE(misfit().holds());
    }
    SECTION("an oblique camera is told, and measures all the same") {
        seen.camera.turnRadians = {0.21, 0.0, 0.0};
        seen.camera = drawn::aimedAt(seen.camera, {100.0, 60.0});
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"plate-tilted"});
        CHECK(check.holds());
    }
    SECTION("hidden markers") {
        seen.printed.resize(6);
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"markers-missing"});
        CHECK(check.holds());
        seen.printed.resize(3);
        CHECK_FALSE(seen.check().holds());
    }
    SECTION("no lens") {
        seen.box.lens.reset();
        seen.camera.lens.distortion = {};
        const PlateCheck check = seen.check();
        CHECK(faultsOf(check) == std::vector<std::string>{"not-this-camera"});
        CHECK_FALSE(check.tiltDegrees);
    }
}

TEST_CASE("a rod on the animal's plane is read to its length", "[box-check]") {
    Seen seen;
    seen.camera.turnRadians = {0.06, -0.08, 0.0};
    seen.camera = drawn::aimedAt(seen.camera, {100.0, 60.0});
    const Scale scale = seen.scale();
    const bool round = GENERATE(true, false);
    const double thickness = GENERATE(1.5, 3.0, 6.0);
    const cv::Point2d from(45.0, 48.0), to(45.0 + 96.0, 48.0 + 28.0);  // 100 mm
    const auto boundary = outlineOf(seen.camera, from, to, thickness, 8.0, round);
    const auto rod = readRod(boundary, seen.box, scale, round ? RodShape::Round : RodShape::Flat);
    REQUIRE(rod);
    INFO("round " << round << " thickness " << thickness);
    CHECK(rod.value().lengthMm.value == Approx(100.0).margin(0.05));
    CHECK(rod.value().thicknessMm == Approx(thickness).margin(0.02));
    const RodCheck check = checkRod(seen.box, seen.check(), rod.value(), 100.0);
    CHECK_FALSE(check.finding);
    CHECK(check.trueWithin < 0.0015);
    // The slant of the ends is what would be missed: a tenth of a millimetre and more for the thick round rod.
    if (round && thickness == 6.0)
        CHECK(readRod(boundary, seen.box, scale, RodShape::Flat).value().lengthMm.value > 100.2);
}

TEST_CASE("a rod that reads wrong tells what would explain it", "[box-check]") {
    Seen seen;
    SECTION("print at 94 %") {
        seen.printed = drawn::markersOf(seen.box, 0.94);
        const auto rod = readRod(outlineOf(seen.camera, {50, 60}, {150, 60}, 2.0, 8.0, true), seen.box, seen.scale());
        REQUIRE(rod);
        const RodCheck check = checkRod(seen.box, seen.check(), rod.value(), 100.0);
        REQUIRE(check.finding);
        CHECK(check.relativeError == Approx(1.0 / 0.94 - 1.0).margin(0.002));
        CHECK(check.finding->sentence.find("the plate's print is at fault") != std::string::npos);
        CHECK(check.finding->sentence.find("printed at 9") != std::string::npos);
    }
    SECTION("a rod 20 mm before the plate and not 8") {
        const auto rod = readRod(outlineOf(seen.camera, {50, 60}, {150, 60}, 2.0, 20.0, true), seen.box, seen.scale());
        REQUIRE(rod);
        const RodCheck check = checkRod(seen.box, seen.check(), rod.value(), 100.0);
        REQUIRE(check.finding);
        CHECK(check.relativeError > 0.015);
        CHECK(check.finding->sentence.find("hangs 20.") != std::string::npos);
        CHECK(check.finding->sentence.find("at fault") == std::string::npos);
    }
    SECTION("a rod read within its interval is true") {
        const auto rod = readRod(outlineOf(seen.camera, {50, 60}, {150, 60}, 2.0, 9.0, true), seen.box, seen.scale());
        REQUIRE(rod);
        const RodCheck check = checkRod(seen.box, seen.check(), rod.value(), 100.0);
        CHECK_FALSE(check.finding);
        CHECK(check.trueWithin == Approx(0.0016).margin(0.0008));  // 1 mm nearer: 1 / (n · 464 mm)
    }
}

TEST_CASE("what is no straight rod is refused", "[box-check]") {
    const Seen seen;
    const Scale scale = seen.scale();
    CHECK(readRod({}, seen.box, scale).refusal().reason == "no-rod");
    const auto stout = outlineOf(seen.camera, {80, 60}, {120, 60}, 15.0, 8.0, false);
    CHECK(readRod(stout, seen.box, scale).refusal().reason == "no-rod");
    auto bent = outlineOf(seen.camera, {50, 60}, {150, 60}, 3.0, 8.0, false);
    for (PixelPoint& p : bent) p.y += 60.0 * std::pow((p.x - 1000.0) / 500.0, 2);
    CHECK(readRod(bent, seen.box, scale).refusal().reason == "no-rod");
}
