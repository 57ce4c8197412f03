// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ringrule/workflow/measure_photo.h"

namespace ringrule::cli {

struct JsonLineOptions {
    bool outline = false;  ///< with the outline's points
};

/// The line of one animal (format "ringrule-measure/1", see `docs/command-line.md`). `photo` is the photo's name as the
/// user wrote it.
[[nodiscard]] std::string animalLine(const std::string& photo, const PhotoReading& reading, const AnimalReading& animal,
                                     const JsonLineOptions& options = {});

/// The line of a photo that could not be measured as a whole: the same keys, `animal_index` null, and the reason.
[[nodiscard]] std::string refusedPhotoLine(const std::string& photo, const PhotoReading& reading,
                                           const JsonLineOptions& options = {});

}  // namespace ringrule::cli
