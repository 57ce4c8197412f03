// SPDX-License-Identifier: GPL-3.0-or-later
#include "scene_sampler.h"

#include "box_file.h"
#include "plate_drawing.h"
#include "sight.h"

#include <algorithm>
#include <cmath>

namespace render {

namespace {

Coat sampleCoat(Random& random, double paleShare) {
    static constexpr std::array<std::array<double, 3>, 6> kTones{
        {{96, 74, 44}, {74, 78, 42}, {122, 98, 48}, {58, 46, 34}, {104, 84, 62}, {66, 70, 60}}};
    Coat coat;
    const auto& tone = kTones[static_cast<std::size_t>(random.below(6))];
    const double lift = random.unit() < paleShare ? random.between(1.45, 1.75) : random.between(1.0, 1.35);
    for (int i = 0; i < 3; ++i) {
        coat.srgb[i] = std::min(235.0, tone[static_cast<std::size_t>(i)] * lift * random.between(0.95, 1.05));
    }
    coat.mottling = random.between(0.2, 0.45);
    coat.banding = random.between(0.05, 0.16);
    coat.paleBelly = random.between(0.2, 0.55);
    return coat;
}

Animal sampleAnimal(Random& random, const SamplerOptions& options) {
    Animal animal;
    animal.shape = options.shape.value_or(random.unit() < 0.667 ? Shape::Pipefish : Shape::Seahorse);
    const bool pipefish = animal.shape == Shape::Pipefish;
    animal.code = "S" + std::to_string(1 + random.below(900));
    animal.card = 1 + random.below(900);
    animal.species = pipefish ? "Syngnathus typhle" : "Hippocampus reidi";
    animal.sex = random.unit() < 0.5 ? "female" : "male";
    animal.lengthMm = options.shortestMm * std::pow(options.longestMm / options.shortestMm, random.unit());
    const bool thin = random.unit() < options.thinShare;
    animal.bellyHollow = thin ? random.between(0.02, 0.09) : random.between(-0.10, -0.03);
    animal.headFraction = random.between(0.205, 0.225);
    animal.trunkFraction = random.between(0.265, 0.29);
    if (pipefish) {
        const double spread = std::clamp(random.normal(0.0, 0.07), -0.2, 0.2);
        animal.trunkDepthMm = animal.lengthMm / 28.0 * std::exp(spread) * (thin ? 0.84 : 1.0);
        animal.trunkWidthMm = animal.trunkDepthMm * std::clamp(random.normal(0.9, 0.05), 0.75, 1.05);
    } else {
        animal.trunkDepthMm = animal.lengthMm * random.between(0.095, 0.118);
        animal.trunkWidthMm = animal.trunkDepthMm * random.between(0.62, 0.8);
        animal.bellyHollow = thin ? random.between(0.03, 0.10) : random.between(-0.03, 0.02);
        animal.headAngleDeg = random.between(62.0, 98.0);
        animal.pouch = animal.sex == "male" ? random.between(0.12, 0.25) : 0.0;
    }
    animal.coat = sampleCoat(random, options.paleShare);
    return animal;
}

Posture samplePosture(Random& random, const Animal& animal, const SamplerOptions& options) {
    Posture posture;
    const double widest = options.widestBendDeg;
    posture.trunkBendDeg = random.between(-0.1, 0.1) * widest;
    posture.tailBendDeg = random.between(-1.0, 1.0) * widest;
    posture.tailWaveDeg = random.between(-0.5, 0.5) * widest;
    if (animal.shape == Shape::Seahorse) {
        const double draw = random.unit();
        posture.tail = draw < options.closedTailShare                             ? Tail::Closed
                       : draw < options.closedTailShare + options.halfCurledShare ? Tail::HalfCurled
                                                                                  : Tail::Open;
        posture.tailBendDeg = posture.tail == Tail::Open ? random.between(20.0, 80.0) : random.between(0.0, 25.0);
        posture.tailWaveDeg = random.between(-10.0, 10.0);
    }
    return posture;
}

Placement samplePlacement(Random& random, const Animal& animal, const Box& box, const SamplerOptions& options) {
    Placement placement;
    placement.centreMm = {0.5 * box.plateMm.width + random.normal(0.0, 0.008 * box.plateMm.width),
                          0.49 * box.plateMm.height + random.normal(0.0, 0.016 * box.plateMm.height)};
    placement.facingRight = random.unit() < 0.4;
    // A seahorse is laid along the plate: its trunk's axis turned a quarter.
    const double quarter = animal.shape == Shape::Seahorse ? (placement.facingRight ? 90.0 : -90.0) : 0.0;
    placement.rotationDeg = quarter + random.normal(0.0, 2.5);
    placement.pitchDeg = random.normal(0.0, options.pitchSdDeg);
    placement.distanceMm = std::max(0.2 * box.animalDistanceMm, random.normal(box.animalDistanceMm, options.planeSdMm));
    return placement;
}

Light sampleLight(Random& random, const SamplerOptions& options) {
    Light light;
    light.level = random.between(0.50, 0.68);
    light.slope = {random.between(-1.0, 1.0) * options.unevenLight, random.between(-1.0, 1.0) * options.unevenLight};
    light.fallOff = random.between(0.02, 0.12);
    light.tint = {random.between(0.93, 1.0), 1.0, random.between(0.94, 1.02)};
    light.shadowShiftMm = {random.normal(0.0, 2.0), random.between(2.5, 5.5)};
    light.shadowBlurMm = random.between(1.2, 2.6);
    light.shadow = random.between(0.10, std::max(0.10, options.strongestShadow));
    light.haze = random.between(0.0, options.mostHaze);
    return light;
}

}  // namespace

Scene sampleScene(std::uint64_t seed, const Box& box, const SamplerOptions& options) {
    Random random(seedOf(seed, 1));
    Scene scene;
    scene.seed = seed;
    scene.view = options.view;
    scene.box = box;
    scene.animal = sampleAnimal(random, options);
    scene.posture = samplePosture(random, scene.animal, options);
    scene.placement = samplePlacement(random, scene.animal, box, options);
    scene.camera.aimMm = {0.5 * box.plateMm.width + random.normal(0.0, 0.003 * box.plateMm.width),
                          0.5 * box.plateMm.height + random.normal(0.0, 0.004 * box.plateMm.width)};
    const double tilt = options.steepestTiltDeg;
    scene.camera.tiltXDeg = random.between(-tilt, tilt);
    scene.camera.tiltYDeg = random.between(-tilt, tilt);
    scene.camera.rollDeg = random.normal(0.0, 0.4);
    scene.light = sampleLight(random, options);
    scene.sensor.widthPx = options.widthPx;
    scene.sensor.heightPx = options.heightPx;
    scene.sensor.blurPx = random.between(options.leastBlurPx, options.mostBlurPx);
    scene.sensor.fullWell = random.between(9000.0, 24000.0) / std::max(1e-9, options.noise * options.noise);
    scene.sensor.readNoise = 0.0015 * options.noise;
    scene.sensor.jpegQuality = options.jpegQuality;
    scene.card.shown = options.card;
    scene.card.text = scene.animal.code;
    scene.card.markerMm = 0.05 * box.plateMm.width;
    placeCardClear(scene, random);
    return scene;
}

void placeCardClear(Scene& scene, Random& random) {
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    const cv::Size2d plate = scene.box.plateMm;
    const double halfText = 0.5 * (cardWidthMm(scene.card) - 1.4 * scene.card.markerMm);
    double best = -1.0;
    for (const double x : {0.09, 0.44, 0.80}) {
        for (const double y : {0.215, 0.755}) {
            const cv::Point2d place(x * plate.width, y * plate.height);
            const cv::Point2d middle = place + cv::Point2d(halfText, 0.0);
            double nearest = 1e9;
            for (const Part& part : body.parts) {
                for (const Station& station : part.stations) {
                    const cv::Vec3d mm = sight.plateFromBody(station.spineMm);
                    nearest = std::min(nearest, std::hypot(0.7 * (mm[0] - middle.x), mm[1] - middle.y));
                }
            }
            if (nearest > best) {
                best = nearest;
                scene.card.centreMm = place;
            }
        }
    }
    scene.card.centreMm += cv::Point2d(random.between(-0.006, 0.006), random.between(-0.003, 0.003)) * plate.width;
    scene.card.rotationDeg = random.normal(0.0, 2.0);
}

Box boxFor(double longestMm, double distanceFactor) {
    Box box = benchBox();
    const double size = std::max(20.0, longestMm * 200.0 / 165.0) / box.plateMm.width;
    box.name = "bench box x " + std::to_string(size).substr(0, 5);
    box.plateMm = {box.plateMm.width * size, box.plateMm.height * size};
    for (Marker& marker : box.markers) {
        marker.centreMm *= size;
        marker.sideMm *= size;
    }
    box.animalDistanceMm = std::clamp(8.0 * size, 2.0, 14.0);
    box.animalToleranceMm = 0.25 * box.animalDistanceMm;
    const double before = 470.0;
    box.media->cameraToWindowMm *= distanceFactor;
    box.media->waterToPlateMm = std::max(60.0 * size, 2.5 * box.animalDistanceMm);
    const double after = box.media->cameraToWindowMm + 3.35 + box.media->waterToPlateMm / 1.34;
    const double zoom = after / before / size;
    box.lens->fxPx *= zoom;
    box.lens->fyPx *= zoom;
    box.lens->distortion[0] *= zoom * zoom;
    box.lens->distortion[1] *= zoom * zoom * zoom * zoom;
    return box;
}

}  // namespace render
