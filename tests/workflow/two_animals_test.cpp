// SPDX-License-Identifier: GPL-3.0-or-later
// Two animals that cross or touch in one photo: never measured as one, and right once a keeper has cut them apart.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <opencv2/imgcodecs.hpp>

#include "../render/box_file.h"
#include "../render/photograph.h"
#include "../render/truth.h"
#include "../scratch_folder.h"
#include "ringrule/geometry/polygon.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/outline/edit_outline.h"
#include "ringrule/workflow/measure_photo.h"

using namespace ringrule;

namespace {

render::Animal pipefish(double lengthMm) {
    render::Animal animal;
    animal.lengthMm = lengthMm;
    animal.trunkDepthMm = lengthMm / 26.0;
    animal.trunkWidthMm = 0.9 * animal.trunkDepthMm;
    return animal;
}

/// A pipefish of 130 mm along the plate and one of 90 mm before it.
render::Scene twoPipefish(cv::Point2d otherCentreMm, double otherTurnDeg) {
    render::Scene scene;
    scene.box = render::benchBox();
    scene.animal = pipefish(130.0);
    scene.placement.centreMm = {100.0, 60.0};
    scene.placement.distanceMm = 8.0;
    render::Companion other;
    other.animal = pipefish(90.0);
    other.placement = scene.placement;
    other.placement.centreMm = otherCentreMm;
    other.placement.rotationDeg = otherTurnDeg;
    scene.companions = {other};
    return scene;
}

/// What one of the scene's animals truly is, and where its outline lies in the photo.
struct Animal {
    double lengthMm = 0.0;
    double depthMm = 0.0;
    std::vector<PixelPoint> outlinePx;
};

Animal truthIn(render::Scene scene, bool companion) {
    if (companion) {
        scene.animal = scene.companions[0].animal;
        scene.placement = scene.companions[0].placement;
    }
    const render::Body body = render::bodyOf(scene.animal, scene.posture, scene.view);
    const render::Sight sight(scene, body);
    const render::Truth truth = render::truthOf(scene, body, 1500);
    Animal animal{truth.standardLengthMm, truth.trunkDepthMm, {}};
    for (const cv::Point2d at : sight.pxFromBody(truth.outlineBodyMm)) animal.outlinePx.push_back({at.x, at.y});
    return animal;
}

struct Taken {
    Photo photo;
    PhotoReading reading;
};

Taken taken(const ScratchFolder& scratch, const render::Scene& scene) {
    const auto file = scratch.path() / "two_rendered.png";
    cv::imwrite(file.string(), render::photograph(scene));
    const auto box = scratch.path() / "box.json";
    render::writeBox(scene.box, box);
    return {loadPhoto(file), measurePhoto(file, readBox(box))};
}

/// The two places where the outline crosses a line x = const (or y = const) near `beside`, lesser first.
std::pair<double, double> sidesAt(const std::vector<PixelPoint>& outline, bool vertical, double at, double beside) {
    std::vector<double> met;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const PixelPoint a = outline[i];
        const PixelPoint b = outline[(i + 1) % outline.size()];
        const double ka = vertical ? a.x - at : a.y - at;
        const double kb = vertical ? b.x - at : b.y - at;
        if ((ka < 0.0) == (kb < 0.0)) continue;
        const PixelPoint place = a + (b - a) * (ka / (ka - kb));
        met.push_back(vertical ? place.y : place.x);
    }
    std::sort(met.begin(), met.end(), [&](double p, double q) { return std::abs(p - beside) < std::abs(q - beside); });
    return std::minmax(met.at(0), met.at(1));
}

/// A bent line along one side of the upper animal, from plate to plate.
std::vector<PixelPoint> lineBeside(double x, double top, double bottom, double outward) {
    return {{x + 8.0 * outward, top - 8.0}, {x, top + 1.0}, {x, bottom - 1.0}, {x + 8.0 * outward, bottom + 8.0}};
}

double areaOf(const Outline& outline) {
    return std::abs(signedArea<PixelFrame>(outline.boundaryPx));
}

}  // namespace

TEST_CASE("two pipefish that cross are refused, and measured right when they are cut apart and joined") {
    const ScratchFolder scratch;
    const render::Scene scene = twoPipefish({112.0, 62.0}, 90.0);
    const Taken took = taken(scratch, scene);
    REQUIRE(took.reading.animals.size() == 1);
    CHECK_FALSE(took.reading.animals[0].measurement.measured());
    REQUIRE(took.reading.animals[0].measurement.refusal.has_value());
    CHECK(took.reading.animals[0].measurement.refusal->reason == "not-one-body");
    CHECK_FALSE(took.reading.animals[0].measurement.trunkDepthMm.known());

    const Animal lower = truthIn(scene, false);
    const Animal upper = truthIn(scene, true);
    double middleX = 0.0;
    for (const PixelPoint at : upper.outlinePx) middleX += at.x / static_cast<double>(upper.outlinePx.size());
    const auto [top, bottom] = sidesAt(lower.outlinePx, true, middleX, lower.outlinePx.front().y);
    const auto [left, right] = sidesAt(upper.outlinePx, false, 0.5 * (top + bottom), middleX);
    const auto first = cutAlong(took.reading.animals[0].outline, lineBeside(left, top, bottom, -1.0));
    REQUIRE(first.ok());
    REQUIRE(first.value().size() == 2);
    const auto second = cutAlong(first.value()[1], lineBeside(right, top, bottom, 1.0));
    REQUIRE(second.ok());
    REQUIRE(second.value().size() == 2);
    const Outline& freed = second.value()[0];
    const auto whole = joined(first.value()[0], second.value()[1], 3.0 * (right - left));
    REQUIRE(whole.ok());
    const PhotoReading apart = withOutlines(took.photo, took.reading, {0}, {whole.value(), freed});
    REQUIRE(apart.animals.size() == 2);
    for (const AnimalReading& animal : apart.animals) {
        INFO(animal.measurement.refusal.value_or(Refusal{}).reason);
        REQUIRE(animal.measurement.measured());
        const Animal& truth = animal.measurement.standardLengthMm.value > 110.0 ? lower : upper;
        // As single animals at this size: lengths to 0.6 %; the cut's flanks touch the depth more, 3 %.
        CHECK(animal.measurement.standardLengthMm.value == Approx(truth.lengthMm).epsilon(0.006));
        CHECK(animal.measurement.trunkDepthMm.value == Approx(truth.depthMm).epsilon(0.03));
        CHECK_FALSE(animal.card.has_value());
    }
    CHECK(areaOf(apart.animals[0].outline) + areaOf(apart.animals[1].outline) >
          areaOf(took.reading.animals[0].outline));  // what the upper one hid was bridged
}

TEST_CASE("two pipefish that touch along their bodies are never measured as one") {
    const ScratchFolder scratch;
    for (const double apartMm : {1.5, 3.0, 4.0}) {
        const Taken took = taken(scratch, twoPipefish({118.0, 60.0 + apartMm}, 3.0));
        for (const AnimalReading& animal : took.reading.animals) {
            if (!animal.measurement.measured()) continue;
            const double lengthMm = animal.measurement.standardLengthMm.value;
            INFO(apartMm << " mm apart: " << lengthMm);
            CHECK((std::abs(lengthMm - 130.0) < 1.3 || std::abs(lengthMm - 90.0) < 0.9));
        }
    }
}
