// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo_set.h"

#include "picture_set.h"
#include "scene_sampler.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace render {

namespace {

struct Shot {
    char letter;
    View view;
};

std::uint64_t seedFor(const Animal& animal, std::size_t session, char letter) {
    return seedOf(20310000 + session * 100 + static_cast<std::uint64_t>(animal.card),
                  static_cast<std::uint64_t>(letter));
}

// Camera and lamps stand still during a session and differ a little between sessions.
Scene sessionScene(std::size_t session, const Box& box) {
    SamplerOptions options;
    options.steepestTiltDeg = 1.2;
    options.mostHaze = 0.06;
    options.unevenLight = 0.09;
    options.strongestShadow = 0.32;
    Scene scene = sampleScene(900 + session, box, options);
    scene.sensor.blurPx = 0.75;
    scene.sensor.fullWell = 20000.0;
    scene.sensor.readNoise = 0.0012;
    scene.sensor.noiseGrainPx = 0.75;
    scene.sensor.jpegQuality = 76;
    return scene;
}

Posture demoPosture(const Animal& animal, std::size_t session, Random& random) {
    Posture posture;
    posture.tail = tailAt(animal, session);
    if (animal.shape == Shape::Pipefish) {
        posture.trunkBendDeg = random.normal(0.0, 0.7);
        posture.tailBendDeg = std::clamp(random.normal(1.0, 6.0), -13.0, 13.0);
        posture.tailWaveDeg = std::clamp(random.normal(0.0, 4.0), -9.0, 9.0);
        return posture;
    }
    posture.trunkBendDeg = random.normal(0.0, 3.0);
    posture.tailBendDeg = posture.tail == Tail::Open ? random.between(20.0, 60.0) : random.between(4.0, 20.0);
    posture.tailWaveDeg = random.normal(0.0, 4.0);
    return posture;
}

Placement demoPlacement(const Animal& animal, const Box& box, Random& random) {
    Placement placement;
    placement.facingRight = random.unit() < 0.35;
    const double quarter = animal.shape == Shape::Seahorse ? (placement.facingRight ? 90.0 : -90.0) : 0.0;
    placement.rotationDeg = quarter + random.normal(0.0, 1.6);
    placement.centreMm = {100.0 + random.normal(0.0, 1.5), 58.0 + random.normal(0.0, 2.0)};
    placement.pitchDeg = std::clamp(random.normal(0.0, 2.0), -4.5, 4.5);
    placement.distanceMm =
        std::clamp(random.normal(box.animalDistanceMm, 1.0), box.animalDistanceMm - 2.3, box.animalDistanceMm + 2.3);
    return placement;
}

std::string timeOfShot(const std::string& day, int seconds) {
    std::array<char, 48> clock{};
    const int all = 8 * 3600 + 32 * 60 + seconds;
    std::snprintf(clock.data(), clock.size(), "T%02d:%02d:%02d", all / 3600, all / 60 % 60, all % 60);
    return day + clock.data();
}

// Some sessions keep one photo at the camera's full size.
bool atFullSize(const std::string& code, char letter, std::size_t session) {
    return letter == 'a' && ((code == "P4" && (session == 2 || session == 5)) || (code == "P1" && session == 8) ||
                             (code == "P2" && session == 0));
}

int storedOrientation(const std::string& code, char letter, std::size_t session) {
    if (code == "P5" && letter == 'b' && session == 1) {
        return 6;
    }
    return code == "H2" && letter == 'a' && session == 4 ? 8 : 1;
}

DemoPhoto demoPhoto(const Animal& kind, std::size_t session, const Shot& shot, const Scene& setUp) {
    const std::string& day = demoSessions()[session].on;
    DemoPhoto photo;
    photo.scene = setUp;
    Scene& scene = photo.scene;
    scene.seed = seedFor(kind, session, shot.letter);
    Random random(seedOf(scene.seed, 5));
    scene.animal = animalAt(kind, session);
    scene.view = shot.view;
    scene.posture = demoPosture(scene.animal, session, random);
    scene.placement = demoPlacement(scene.animal, scene.box, random);
    scene.card.text = kind.code;
    placeCardClear(scene, random);
    if (atFullSize(kind.code, shot.letter, session)) {
        scene.sensor.widthPx = 4000;
        scene.sensor.heightPx = 3000;
        scene.sensor.blurPx = 1.3;
        scene.sensor.noiseGrainPx = 1.2;
        scene.sensor.jpegQuality = 84;
    }
    scene.orientation = storedOrientation(kind.code, shot.letter, session);
    scene.photo = kind.code + "-" + shot.letter + "_rendered.jpg";
    const std::filesystem::path folder = shot.view == View::Above   ? std::filesystem::path(day) / "above"
                                         : shot.view == View::Front ? std::filesystem::path(day) / "front"
                                                                    : std::filesystem::path(day);
    photo.photo = folder / scene.photo;
    photo.truth = (std::filesystem::path("truth") / day / scene.photo).replace_extension(".json");
    return photo;
}

}  // namespace

std::vector<DemoPhoto> demoSessionPhotos(std::size_t session, const Box& box) {
    const Scene setUp = sessionScene(session, box);
    Random clock(seedOf(424242, session));
    std::vector<DemoPhoto> photos;
    int seconds = clock.below(300);
    for (const Animal& animal : demoAnimals()) {
        const bool pipefish = animal.shape == Shape::Pipefish;
        if (!pipefish && !demoSessions()[session].seahorses) {
            continue;
        }
        const std::vector<Shot> shots =
            pipefish ? std::vector<Shot>{{'a', View::Side}, {'b', View::Side}, {'c', View::Above}}
                     : std::vector<Shot>{{'a', View::Side}, {'b', View::Front}};
        for (const Shot& shot : shots) {
            photos.push_back(demoPhoto(animal, session, shot, setUp));
            photos.back().scene.takenAt = timeOfShot(demoSessions()[session].on, seconds);
            seconds += 14 + clock.below(25);
        }
        seconds += 90 + clock.below(120);
    }
    return photos;
}

void renderDemoSet(const std::filesystem::path& folder, const Box& box,
                   const std::function<void(const DemoPhoto&)>& done) {
    for (std::size_t session = 0; session < demoSessions().size(); ++session) {
        for (const DemoPhoto& photo : demoSessionPhotos(session, box)) {
            renderToFiles(photo.scene, {folder / photo.photo, folder / photo.truth}, 240);
            done(photo);
        }
    }
    writeHouse(folder / "house.json");
}

}  // namespace render
