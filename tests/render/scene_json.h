// SPDX-License-Identifier: GPL-3.0-or-later
// Scene files ("ringrule-scene/1"): one photo, every value optional but box and animal length.
#pragma once

#include "scene.h"

#include <filesystem>

namespace render {

// The box is named by a path relative to the scene file. Throws std::runtime_error or a JSON
// error when the file is missing, malformed or names what does not exist.
Scene readScene(const std::filesystem::path& file);

}  // namespace render
