// SPDX-License-Identifier: GPL-3.0-or-later
#include "accuracy_scene.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "body.h"
#include "plate_drawing.h"
#include "random.h"
#include "scene_sampler.h"
#include "sight.h"

namespace bench {
namespace {

using render::Random;

constexpr double kShortestMm = 8.0;
constexpr double kLongestMm = 250.0;
constexpr double kLoosePitchDeg = 4.0;
constexpr double kSdsInHalf95 = 1.959963984540054;
constexpr double kPairStride = 5;

/// Width of the trunk over its depth. No source gives it: the scenes draw what docs/measuring-method.md assumes, thin
/// and egg-bound animals among them, so that the coverage of girth from one view tells of the arithmetic and not of
/// that.
struct WidthOverDepth {
    double usual, sd, least, most;
};
constexpr WidthOverDepth kPipefishWidth{0.90, 0.10, 0.65, 1.15};
constexpr WidthOverDepth kSeahorseWidth{0.76, 0.10, 0.51, 1.01};

/// How an animal is built: invented ranges around the demo's two species, wide enough for their genera.
struct Build {
    const char* species;
    std::array<double, 2> depthInLength;  ///< of the length
    std::array<double, 2> head, trunk;    ///< of the length
};
constexpr std::array<Build, 3> kPipefish{{{"Syngnathus typhle", {0.033, 0.039}, {0.205, 0.225}, {0.265, 0.29}},
                                          {"Syngnathus floridae", {0.036, 0.045}, {0.180, 0.200}, {0.255, 0.28}},
                                          {"Syngnathus acus", {0.028, 0.035}, {0.185, 0.215}, {0.26, 0.29}}}};
constexpr std::array<Build, 3> kSeahorses{{{"Hippocampus reidi", {0.095, 0.118}, {0.205, 0.225}, {0.265, 0.29}},
                                           {"Hippocampus erectus", {0.110, 0.135}, {0.195, 0.215}, {0.265, 0.30}},
                                           {"Hippocampus kuda", {0.100, 0.125}, {0.210, 0.230}, {0.26, 0.285}}}};

struct Size {
    int widthPx, heightPx;
    double share;
};
/// 2, 2.8, 5, 8, 12 and 24 megapixels; large photos are dear to render and so are few.
constexpr std::array<Size, 6> kSizes{{{1632, 1224, 0.34},
                                      {1920, 1440, 0.32},
                                      {2592, 1944, 0.22},
                                      {3264, 2448, 0.06},
                                      {4000, 3000, 0.045},
                                      {5664, 4248, 0.015}}};

double drawn(Random& random, const std::array<double, 2>& range) {
    return random.between(range[0], range[1]);
}

/// What photos of one animal share: the animal, its box, the camera, where it hangs.
struct SetUp {
    render::SamplerOptions sampler;
    render::Box box;
    bool lensTold = true;
    double depthOffMm = 0.0;
};

SetUp setUpOf(std::uint64_t seed, Stand stand) {
    Random random(render::seedOf(seed, 77));
    SetUp setUp;
    const double lengthMm = kShortestMm * std::pow(kLongestMm / kShortestMm, random.unit());
    setUp.sampler.shape = random.unit() < 0.6 ? render::Shape::Pipefish : render::Shape::Seahorse;
    setUp.sampler.shortestMm = setUp.sampler.longestMm = lengthMm;
    const double room = setUp.sampler.shape == render::Shape::Pipefish ? 0.98 : 1.05;
    const double distance = random.between(0.7, 1.6);
    setUp.box = render::boxFor(lengthMm * random.between(room, 1.5 * room), distance);
    const double zoom = setUp.box.lens->fxPx / 8500.0;
    setUp.box.lens->distortion[0] = std::clamp(random.normal(0.0, 0.15), -0.35, 0.35) * zoom * zoom;
    setUp.box.lens->distortion[1] = 0.0;
    setUp.lensTold = random.unit() < 0.7;
    const double depthSd = setUp.box.animalToleranceMm / kSdsInHalf95;
    setUp.depthOffMm = stand == Stand::Loose ? random.normal(0.0, depthSd) : 0.0;
    double draw = random.unit();
    const auto size =
        std::find_if(kSizes.begin(), kSizes.end() - 1, [&](const Size& s) { return (draw -= s.share) < 0.0; });
    setUp.sampler.widthPx = size->widthPx;
    setUp.sampler.heightPx = size->heightPx;
    setUp.sampler.widestBendDeg = random.unit() < 0.2 ? random.between(25.0, 60.0) : 25.0;
    setUp.sampler.strongestShadow = 0.45;
    setUp.sampler.unevenLight = 0.18;
    return setUp;
}

void giveBuild(render::Animal& animal, Random& random) {
    const bool pipefish = animal.shape == render::Shape::Pipefish;
    const Build& build = (pipefish ? kPipefish : kSeahorses)[static_cast<std::size_t>(random.below(3))];
    const double usual = pipefish ? 1.0 / 28.0 : 0.1065;
    animal.species = build.species;
    // The sampler's draw of a thin or stout animal is kept about the species' own depth.
    const double condition = pipefish ? animal.trunkDepthMm / (usual * animal.lengthMm) : 1.0;
    animal.trunkDepthMm = animal.lengthMm * drawn(random, build.depthInLength) * condition;
    animal.headFraction = drawn(random, build.head);
    animal.trunkFraction = drawn(random, build.trunk);
    const double coat = random.unit();
    if (coat < 0.06) animal.coat.srgb = {random.between(185.0, 215.0), random.between(150.0, 175.0), 55.0};
    if (coat > 0.92) animal.coat.srgb = {34.0, 31.0, 29.0};
    if (coat > 0.06 && coat < 0.11) animal.coat.srgb = {92.0, 124.0, 58.0};
    const WidthOverDepth& width = pipefish ? kPipefishWidth : kSeahorseWidth;
    animal.trunkWidthMm =
        animal.trunkDepthMm * std::clamp(random.normal(width.usual, width.sd), width.least, width.most);
}

void giveGround(render::Scene& scene, Ground ground) {
    if (ground == Ground::Usual) return;
    Random random(render::seedOf(scene.seed, 80));
    const bool dark = ground == Ground::PaleOnDark;
    const double red = dark ? random.between(165.0, 225.0) : random.between(222.0, 240.0);
    scene.animal.coat.srgb = {red, red * random.between(0.93, 0.99), red * random.between(0.80, 0.96)};
    scene.darkPlate = dark;
}

void givePhoto(render::Scene& scene, Random& random) {
    scene.light.level = random.between(0.34, 0.72);
    const double fine = std::sqrt(scene.sensor.widthPx / 1920.0);
    scene.sensor.blurPx = 0.45 * std::pow(3.2, random.unit()) * std::max(1.0, fine);
    const double noise = random.between(0.5, 2.5);
    scene.sensor.fullWell = random.between(9000.0, 24000.0) / (noise * noise);
    scene.sensor.readNoise = 0.0015 * noise;
    scene.sensor.jpegQuality = 76 + static_cast<int>(random.below(20));
}

/// Whether the whole body hangs before the plate, clear of its rows of markers.
bool clearOfMarkers(const render::Scene& scene) {
    const render::Body body = render::bodyOf(scene.animal, scene.posture, scene.view);
    const render::Sight sight(scene, body);
    const cv::Size2d plate = scene.box.plateMm;
    for (const render::Part& part : body.parts) {
        for (const cv::Point2d& point : render::outlineOf(part)) {
            const cv::Vec3d mm = sight.plateFromBody(point);
            if (mm[0] < 0.03 * plate.width || mm[0] > 0.97 * plate.width) return false;
            if (mm[1] < 0.16 * plate.height || mm[1] > 0.82 * plate.height) return false;
        }
    }
    return true;
}

/// Whether the card, its writing too, lies clear of the animal.
bool clearOfCard(const render::Scene& scene) {
    const render::Body body = render::bodyOf(scene.animal, scene.posture, scene.view);
    const render::Sight sight(scene, body);
    const double tall = 0.9 * scene.card.markerMm;
    const double right = render::cardWidthMm(scene.card) - 0.5 * scene.card.markerMm;
    for (const render::Part& part : body.parts) {
        for (const cv::Point2d& point : render::outlineOf(part)) {
            const cv::Vec3d mm = sight.plateFromBody(point);
            const double x = mm[0] - scene.card.centreMm.x;
            if (x > -tall && x < right + 0.4 * tall && std::abs(mm[1] - scene.card.centreMm.y) < tall) return false;
        }
    }
    return true;
}

render::Scene drawnScene(std::uint64_t seed, std::uint64_t animalSeed, const SetUp& setUp, render::View view,
                         Stand stand) {
    render::SamplerOptions sampler = setUp.sampler;
    sampler.view = view;
    render::Scene scene;
    for (std::uint64_t attempt = 0; attempt < 40; ++attempt) {
        // The animal is the same in every attempt and in both views; posture and placement are drawn anew.
        Random animal(render::seedOf(animalSeed, 78));
        scene = render::sampleScene(seed + 1000003 * attempt, setUp.box, sampler);
        scene.animal = render::sampleScene(animalSeed, setUp.box, sampler).animal;
        scene.seed = seed;
        giveBuild(scene.animal, animal);
        Random photo(render::seedOf(seed, 79 + attempt));
        givePhoto(scene, photo);
        scene.placement.distanceMm = setUp.box.animalDistanceMm + setUp.depthOffMm;
        scene.placement.pitchDeg = stand == Stand::Loose ? photo.normal(0.0, kLoosePitchDeg) : 0.0;
        scene.placement.rotationDeg += photo.normal(0.0, 2.0);
        if (!clearOfMarkers(scene)) continue;
        render::placeCardClear(scene, photo);
        scene.card.shown = clearOfCard(scene);
        break;
    }
    return scene;
}

}  // namespace

AccuracyScene accuracyScene(std::uint64_t seed, Stand stand, Ground ground) {
    const bool second = seed % static_cast<std::uint64_t>(kPairStride) == 4;
    const std::uint64_t animalSeed = second ? seed - 1 : seed;
    const SetUp setUp = setUpOf(animalSeed, stand);
    const bool pipefish = setUp.sampler.shape == render::Shape::Pipefish;
    const render::View view = !second ? render::View::Side : pipefish ? render::View::Above : render::View::Front;
    AccuracyScene result;
    result.scene = drawnScene(seed, animalSeed, setUp, view, stand);
    giveGround(result.scene, ground);
    result.lensTold = setUp.lensTold;
    result.secondOfPair = second;
    return result;
}

render::Box boxTold(const AccuracyScene& accuracyScene) {
    render::Box box = accuracyScene.scene.box;
    if (!accuracyScene.lensTold) box.lens.reset();
    return box;
}

}  // namespace bench
