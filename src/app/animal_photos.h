// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "ringrule/records/store.h"

namespace ringrule {

/// One animal as one session's photo shows it, with what brings photos of many months to one scale.
struct AnimalPhoto {
    Date on;
    StoredPhoto photo;
    std::filesystem::path original;
    std::vector<PixelPoint> outlinePx;  ///< pixels of the upright photo
    double mmPerPx = 0.0;               ///< at the animal
    Estimate lengthMm;
    View view = View::Side;
};

/// Millimetres a pixel at the animal: its head's length over the distance of the marks that bound it, or else its
/// standard length over its midline; nothing when neither is known. Good for looking, not for measuring.
[[nodiscard]] std::optional<double> mmPerPxOf(const StoredMeasure& measure);

/// For each session in which the animal was photographed from the side, the photo whose length is told best, in order
/// of time. Measures that do not count are left out.
[[nodiscard]] std::vector<AnimalPhoto> sidePhotosOf(const Store& store, AnimalId animal);

}  // namespace ringrule
