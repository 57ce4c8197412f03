// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "../scratch_folder.h"
#include "box_file.h"
#include "photo_file.h"
#include "photograph.h"
#include "ringrule/workflow/measure_photo.h"
#include "scene_sampler.h"

using namespace ringrule;

TEST_CASE("numerals of a large plate's scale, some of them run together, are no animals") {
    const ScratchFolder scratch;
    render::SamplerOptions options;
    options.shape = render::Shape::Pipefish;
    options.shortestMm = options.longestMm = 235.0;
    options.widestBendDeg = 10.0;
    options.widthPx = 1632, options.heightPx = 1224;
    const render::Scene scene = render::sampleScene(1, render::boxFor(360.0), options);
    render::writePhoto(render::photograph(scene), {"2031-01-06T09:00:00", 1, 90}, scratch / "large_rendered.jpg");
    render::writeBox(scene.box, scratch / "box.json");
    const PhotoReading reading = measurePhoto(scratch / "large_rendered.jpg", readBox(scratch / "box.json"), {});
    REQUIRE(reading.animals.size() == 1);
    CHECK(reading.animals.front().measurement.standardLengthMm.value == Approx(235.0).epsilon(0.02));
}

TEST_CASE("fry of 12 mm before a plate of their size are found and measured, with the lens known or not") {
    const ScratchFolder scratch;
    render::SamplerOptions options;
    options.shape = render::Shape::Pipefish;
    options.shortestMm = options.longestMm = 12.0;
    options.widestBendDeg = 10.0;
    options.pitchSdDeg = 0.0;
    options.planeSdMm = 0.0;
    options.paleShare = 0.0;
    options.widthPx = 1632, options.heightPx = 1224;
    const render::Scene scene = render::sampleScene(5, render::boxFor(14.0), options);
    render::writePhoto(render::photograph(scene), {"2031-01-06T09:00:00", 1, 90}, scratch / "fry_rendered.jpg");
    render::writeBox(scene.box, scratch / "box.json");
    Box box = readBox(scratch / "box.json");
    REQUIRE(box.plate.widthMm < 30.0);
    for (const bool lens : {true, false}) {
        if (!lens) box.lens.reset();
        const PhotoReading reading = measurePhoto(scratch / "fry_rendered.jpg", box, {});
        REQUIRE(reading.animals.size() == 1);
        const Measurement& m = reading.animals.front().measurement;
        REQUIRE(m.measured());
        // A tail's tip a few pixels wide is found to about 2 of 700 px; an unknown lens adds what its interval says.
        CHECK(std::abs(m.standardLengthMm.value - 12.0) < 0.06 + 2.0 * m.standardLengthMm.u95());
        CHECK(m.standardLengthMm.u95() < 0.5);
    }
}
