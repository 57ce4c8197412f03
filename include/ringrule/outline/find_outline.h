// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/imaging/photo.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

struct OutlineOptions {
    double smallestAnimalMm2 = 3.0;  ///< smaller dark pieces are debris
    int maxAnimals = 40;
};

/// The outlines of all animals before the plate, left to right. Refuses with "no-animal" when the plate is empty and
/// "cannot-separate" when what is dark cannot be told from background, print or shadow.
[[nodiscard]] Outcome<std::vector<Outline>> findOutlines(const Photo& photo, const Box& box, const FoundPlate& plate,
                                                         const Scale& scale, const OutlineOptions& options = {});

}  // namespace ringrule
