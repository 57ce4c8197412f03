// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>
#include <string>

#include "ringrule/measure/measurement.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// One animal as it is drawn over its photo.
struct OverlayAnimal {
    Outline outline;
    Anatomy anatomy;
    Measurement measurement;
    std::string label;  ///< e.g. its code; may be empty
};

/// Writes the photo, upright by its EXIF orientation and cut to its animals, with outline, midline, half-widths and
/// landmarks drawn over it and the measures with their intervals below. About 1600 px wide. Throws `Error(BadPhoto)`
/// when the photo cannot be read, `Error(NoSpace)` when the picture cannot be written.
void writeOverlayPng(const std::filesystem::path& photo, std::span<const OverlayAnimal> animals,
                     const std::filesystem::path& png);

}  // namespace ringrule
