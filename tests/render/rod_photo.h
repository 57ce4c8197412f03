// SPDX-License-Identifier: GPL-3.0-or-later
// A photo of a flat dark strip of known length before the plate: what a keeper checks a box with.
#pragma once

#include "scene.h"

#include <filesystem>

namespace render {

struct RodScene {
    Box box;                   // as its file says it; needs media and lens
    double printScale = 1.0;   // what the printer made of the plate
    cv::Point2d fromMm, toMm;  // the strip's ends, true millimetres before the plate
    double widthMm = 5.0;
    CameraPose camera;
    std::uint64_t seed = 1;  // of the plate's texture and the sensor's noise
};

// Writes the photo in the size of the box's lens, 16 rays a pixel; no date is noted in it.
void photographRod(const RodScene& scene, const std::filesystem::path& file);

}  // namespace render
