// SPDX-License-Identifier: GPL-3.0-or-later
// Prints error, coverage and refusals of the measures against truth over seeded rendered scenes.
// Usage: bench_accuracy [SCENES] [FIRST_SEED] [FOLDER]; the worst photos are kept in FOLDER when one is named.
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <map>
#include <string>

#include <unistd.h>

#include "body.h"
#include "box_file.h"
#include "photo_file.h"
#include "photograph.h"
#include "picture_set.h"
#include "ringrule/imaging/memory.h"
#include "ringrule/imaging/threads.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/workflow/measure_photo.h"
#include "scene_sampler.h"
#include "score.h"
#include "truth.h"

namespace {

namespace fs = std::filesystem;

struct Measure {
    const char* name;
    double truth;
    const ringrule::Estimate* estimate;
    bool relative;  ///< error in % of truth; else the measure is in % already
};

struct Tally {
    std::map<std::string, bench::Score> scores;
    int wrongInSilence = 0;
    int swapped = 0;
    int photosRefused = 0;
};

ringrule::View viewOf(render::View view) {
    switch (view) {
        case render::View::Above: return ringrule::View::Above;
        case render::View::Front: return ringrule::View::Front;
        case render::View::Side: break;
    }
    return ringrule::View::Side;
}

std::string labelOf(const render::Scene& scene) {
    const std::string shape = scene.animal.shape == render::Shape::Pipefish ? "pipefish" : "seahorse";
    const std::string view = scene.view == render::View::Side ? "side" : scene.view == render::View::Above ? "above" : "front";
    const std::string tail = scene.animal.shape == render::Shape::Pipefish       ? ""
                             : scene.posture.tail == render::Tail::Open          ? ", tail open"
                             : scene.posture.tail == render::Tail::HalfCurled    ? ", tail half curled"
                                                                                 : ", tail closed";
    return shape + ", " + view + (scene.view == render::View::Side ? tail : "");
}

/// The worst relative error of a length measured without any remark that warns of it, in %.
double countScene(const render::Scene& scene, const render::Truth& truth, const ringrule::PhotoReading& reading,
                  Tally& tally) {
    const std::string label = labelOf(scene);
    if (reading.animals.empty()) {
        ++tally.photosRefused;
        return 0.0;
    }
    const ringrule::Measurement& found = reading.animals.front().measurement;
    const Measure measures[] = {
        {"standard length", truth.standardLengthMm, &found.standardLengthMm, true},
        {"trunk depth", truth.trunkDepthMm, &found.trunkDepthMm, true},
        {"trunk width", truth.trunkWidthMm, &found.trunkWidthMm, true},
        {"head length", truth.headLengthMm, &found.headLengthMm, true},
        {"belly hollow", truth.bellyHollowPercent.value_or(std::nan("")), &found.bellyHollowPercent, false},
    };
    double worst = 0.0;
    for (const Measure& measure : measures) {
        const bool side = scene.view == render::View::Side;
        if (side == (std::string(measure.name) == "trunk width")) continue;
        bench::Score& score = tally.scores[std::string(measure.name) + " (" + label + ")"];
        if (!measure.estimate->known() || !std::isfinite(measure.truth)) {
            ++score.refused;
            continue;
        }
        const double unit = measure.relative ? 100.0 / measure.truth : 1.0;
        const double error = (measure.estimate->value - measure.truth) * unit;
        score.add(error, measure.estimate->u95() * unit);
        if (measure.estimate == &found.standardLengthMm) worst = std::abs(error);
    }
    return worst;
}

struct Run {
    fs::path keep;
    fs::path scratch;
    render::Box renderBox;
    ringrule::Box box;
    Tally tally;
};

void measureScene(Run& run, std::uint64_t seed) {
    render::SamplerOptions sampler;
    const std::uint64_t kind = seed % 6;
    if (kind == 4) sampler.view = render::View::Above, sampler.shape = render::Shape::Pipefish;
    if (kind == 5) sampler.view = render::View::Front, sampler.shape = render::Shape::Seahorse;
    render::Scene scene = render::sampleScene(seed, run.renderBox, sampler);
    scene.photo = "scene-" + std::to_string(seed) + "_rendered.jpg";
    const fs::path photo = run.scratch / scene.photo;
    render::writePhoto(render::photograph(scene), {"", 1, scene.sensor.jpegQuality}, photo);
    const render::Truth truth = render::truthOf(scene, render::bodyOf(scene.animal, scene.posture, scene.view), 200);
    ringrule::PhotoOptions options;
    options.view = viewOf(scene.view);
    const ringrule::PhotoReading reading = ringrule::measurePhoto(photo, run.box, options);
    const double worst = countScene(scene, truth, reading, run.tally);
    if (!reading.animals.empty() && worst > 5.0) {
        ++run.tally.wrongInSilence;
        std::printf("seed %llu: standard length off by %.1f %%\n", static_cast<unsigned long long>(seed), worst);
    }
    if (!run.keep.empty() && (worst > 1.0 || reading.animals.empty())) {
        fs::copy_file(photo, run.keep / scene.photo, fs::copy_options::overwrite_existing);
    }
    fs::remove(photo);
}

int measureAll(int scenes, std::uint64_t firstSeed, const fs::path& keep) {
    Run run;
    run.keep = keep;
    run.scratch = fs::temp_directory_path() / ("ringrule-bench-" + std::to_string(getpid()));
    fs::create_directories(run.scratch);
    run.renderBox = render::benchBox();
    render::writeBox(run.renderBox, run.scratch / "box.json");
    run.box = ringrule::readBox(run.scratch / "box.json");
    for (int i = 0; i < scenes; ++i) measureScene(run, firstSeed + static_cast<std::uint64_t>(i));
    std::printf("%s\n", bench::tableHead().c_str());
    for (const auto& [label, score] : run.tally.scores) std::printf("%s\n", bench::tableRow(label, score).c_str());
    std::printf("photos refused whole: %d; standard length off by over 5 %%: %d\n", run.tally.photosRefused,
                run.tally.wrongInSilence);
    fs::remove_all(run.scratch);
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    ringrule::keepLargePagesMapped();
    ringrule::useOneThreadPerPhoto();
    try {
        return measureAll(argc > 1 ? std::atoi(argv[1]) : 200, argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1,
                          argc > 3 ? argv[3] : "");
    } catch (const std::exception& error) {
        std::fprintf(stderr, "bench_accuracy: %s\n", error.what());
        return 2;
    }
}
