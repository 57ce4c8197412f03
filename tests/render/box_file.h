// SPDX-License-Identifier: GPL-3.0-or-later
// Reads and writes box files ("ringrule-box/1") for the photographer alone.
#pragma once

#include "scene.h"

#include <filesystem>

namespace render {

// Throws std::runtime_error when the file is missing or is not a box file.
Box readBox(const std::filesystem::path& file);
void writeBox(const Box& box, const std::filesystem::path& file);

// The bench box of the demo: 200 × 120 mm plate, eight markers along its long rims, camera
// 420 mm before a 5 mm acrylic window, 60 mm of sea water, 12-megapixel lens.
Box benchBox();

}  // namespace render
