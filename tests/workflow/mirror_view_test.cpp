// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <opencv2/core.hpp>

#include "../scratch_folder.h"
#include "box_file.h"
#include "photo_file.h"
#include "photograph.h"
#include "ringrule/optics/box_writer.h"
#include "ringrule/workflow/measure_photo.h"
#include "scene_sampler.h"
#include "truth.h"

using namespace ringrule;

namespace {

constexpr double kMeetsPlateAtMm = 42.0;

/// A pipefish before the plate, and its image in a 45° mirror above it: reflection in y + z = 42 swaps height on the
/// plate and distance from it.
struct Mirrored {
    render::Scene direct, image;

    Mirrored() {
        render::SamplerOptions options;
        options.shape = render::Shape::Pipefish;
        options.shortestMm = options.longestMm = 125.0;
        options.widestBendDeg = 6.0;
        options.paleShare = 0.0;
        options.card = false;
        options.strongestShadow = 0.1;
        options.widthPx = 1632, options.heightPx = 1224;
        direct = render::sampleScene(11, render::benchBox(), options);
        direct.placement = {{100.0, 80.0}, 0.0, 0.0, 8.0, false};
        image = direct;
        image.view = render::View::Above;
        image.placement.centreMm.y = kMeetsPlateAtMm - direct.placement.distanceMm;
        image.placement.distanceMm = kMeetsPlateAtMm - direct.placement.centreMm.y;
    }
    [[nodiscard]] cv::Mat3b photo() const {
        cv::Mat3b seen = render::photograph(direct);
        const render::Sight sight(direct, render::bodyOf(direct.animal, direct.posture, direct.view));
        const int row = static_cast<int>(sight.camera().pxFromPlate({100.0, 55.0}, 0.0).y);
        render::photograph(image).rowRange(0, row).copyTo(seen.rowRange(0, row));
        return seen;
    }
    [[nodiscard]] render::Truth truth() const {
        return render::truthOf(direct, render::bodyOf(direct.animal, direct.posture, direct.view), 40);
    }
};

}  // namespace

TEST_CASE("a photo with a mirror gives the side's measures and the width, each by its own way through the water") {
    const ScratchFolder scratch;
    const Mirrored mirrored;
    render::writePhoto(mirrored.photo(), {"2031-01-06T09:00:00", 1, 90}, scratch / "m_rendered.jpg");
    render::writeBox(render::benchBox(), scratch / "box.json");
    Box box = readBox(scratch / "box.json");
    box.mirror = Mirror{true, kMeetsPlateAtMm, 25.0, 1.0};
    PhotoOptions options;
    options.view = View::Mirror;
    const PhotoReading reading = measurePhoto(scratch / "m_rendered.jpg", box, options);
    REQUIRE(reading.animals.size() == 1);
    const Measurement& m = reading.animals.front().measurement;
    const render::Truth truth = mirrored.truth();
    CHECK(m.measured());
    CHECK(m.view == View::Mirror);
    // An edge of a few hundredths of a pixel on each side of 36: 0.3 %; marker corners and the animal's height 0.2 %.
    CHECK(m.standardLengthMm.value == Approx(truth.standardLengthMm).epsilon(0.004));
    CHECK(m.trunkDepthMm.value == Approx(truth.trunkDepthMm).epsilon(0.01));
    // On the animal's own plane the width would read a tenth too small.
    CHECK(m.trunkWidthMm.value == Approx(truth.trunkWidthMm).epsilon(0.01));
    CHECK(m.girthMm.value == Approx(truth.girthMm).epsilon(0.01));
    CHECK(m.girthMm.u95() < 0.02 * m.girthMm.value);
    CHECK(std::find(m.remarks.begin(), m.remarks.end(), Remark::WidthFromSecondView) != m.remarks.end());
    CHECK(std::find(m.remarks.begin(), m.remarks.end(), Remark::WidthFromShape) == m.remarks.end());

    // A landmark moved on the side leaves the width.
    const auto moved = withLandmarkMoved(reading, reading.animals.front(), LandmarkName::HeadEnd,
                                         reading.animals.front().anatomy.landmarks.headEnd->atPx);
    CHECK(moved.measurement.trunkWidthMm.value == m.trunkWidthMm.value);
}

TEST_CASE("where the mirror stands is read and written with the box") {
    const ScratchFolder scratch;
    render::writeBox(render::benchBox(), scratch / "box.json");
    Box box = readBox(scratch / "box.json");
    CHECK_FALSE(box.mirror.has_value());
    box.mirror = Mirror{false, 90.5, 22.0, 1.5};
    const Box again = parseBox(boxText(box));
    REQUIRE(again.mirror.has_value());
    CHECK_FALSE(again.mirror->aboveAnimal);
    CHECK(again.mirror->meetsPlateAtMm == 90.5);
    CHECK(again.mirror->reachMm == 22.0);
    CHECK(again.mirror->toleranceMm == 1.5);
}
