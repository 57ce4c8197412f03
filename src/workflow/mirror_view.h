// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/optics/plate.h"
#include "ringrule/workflow/measure_photo.h"

namespace ringrule {

/// The outlines of a photo with a mirror: animals seen straight on, and their images in the mirror.
struct MirroredOutlines {
    std::vector<Outline> direct;
    std::vector<Outline> mirrored;
};
[[nodiscard]] MirroredOutlines partedByMirror(const std::vector<Outline>& outlines, const Box& box, const Scale& scale);

/// Adds to an animal's reading the trunk width that its image in the mirror shows. The image lies as far behind the
/// plate as the animal hangs from the line in which the mirror meets the plate: its own way through the water is that
/// much longer, and so its scale is its own. Unchanged when there is no image of it. Precondition: `box.mirror`.
[[nodiscard]] AnimalReading withMirroredWidth(const Photo& photo, const Box& box, const FoundPlate& plate,
                                              const PhotoReading& reading, AnimalReading animal,
                                              const std::vector<Outline>& mirrored);

}  // namespace ringrule
