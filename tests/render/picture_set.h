// SPDX-License-Identifier: GPL-3.0-or-later
// Renders a scene into a photo file and its truth file.
#pragma once

#include "scene.h"

#include <filesystem>

namespace render {

struct PictureFiles {
    std::filesystem::path photo, truth;
};

// Writes both files, making their folders; `outlinePoints` sets how fine the truth's outline is.
void renderToFiles(const Scene& scene, const PictureFiles& files, int outlinePoints = 400);

}  // namespace render
