// SPDX-License-Identifier: GPL-3.0-or-later
#include "box_file.h"
#include "photo_file.h"
#include "photograph.h"
#include "scene_sampler.h"
#include "truth.h"

#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>

int main(int argc, char** argv) {
    using namespace render;
    const std::filesystem::path folder = argc > 1 ? argv[1] : "/tmp/render-first";
    std::filesystem::create_directories(folder);
    const Box box = benchBox();
    writeBox(box, folder / "bench-box.json");
    for (int i = 0; i < 10; ++i) {
        SamplerOptions options;
        options.shape = i < 8 ? Shape::Pipefish : Shape::Seahorse;
        options.view = i < 6 || i > 7 ? View::Side : View::Above;
        options.shortestMm = i < 8 ? 90 : 125;
        options.closedTailShare = 0;
        Scene scene = sampleScene(static_cast<std::uint64_t>(100 + i), box, options);
        const char* names[] = {"side", "above", "front"};
        scene.photo = std::string(i < 8 ? "pipefish-" : "seahorse-") + names[static_cast<int>(scene.view)] + std::to_string(i) + ".jpg";
        scene.takenAt = "2031-01-06T08:40:0" + std::to_string(i);
        const Body body = bodyOf(scene.animal, scene.posture, scene.view);
        const Sight sight(scene, body);
        writePhoto(develop(scene, exposeScene(scene, body, sight)), {scene.takenAt, 1, scene.sensor.jpegQuality}, folder / scene.photo);
        std::ofstream((folder / scene.photo).replace_extension(".json")) << truthJson(scene, truthOf(scene, body), sight).dump() << '\n';
    }
}
