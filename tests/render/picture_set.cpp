// SPDX-License-Identifier: GPL-3.0-or-later
#include "picture_set.h"

#include "photo_file.h"
#include "photograph.h"
#include "truth.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace render {

void renderToFiles(const Scene& scene, const PictureFiles& files, int outlinePoints) {
    const Body body = bodyOf(scene.animal, scene.posture, scene.view);
    const Sight sight(scene, body);
    std::filesystem::create_directories(std::filesystem::absolute(files.photo).parent_path());
    std::filesystem::create_directories(std::filesystem::absolute(files.truth).parent_path());
    writePhoto(develop(scene, exposeScene(scene, body, sight)),
               {scene.takenAt, scene.orientation, scene.sensor.jpegQuality}, files.photo);
    std::ofstream stream(files.truth);
    stream << truthJson(scene, truthOf(scene, body, outlinePoints), sight).dump() << '\n';
    if (!stream) {
        throw std::runtime_error("cannot write " + files.truth.string());
    }
}

}  // namespace render
