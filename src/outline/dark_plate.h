// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

#include "outline/plate_region.h"
#include "outline/reduced.h"
#include "outline/tone.h"

namespace ringrule {

/// Whether the plate is a dark one: its ground far darker than the white round its markers.
[[nodiscard]] bool plateIsDark(const Reduced& coarse, const PlateRegion& region);

/// The region with the white patches of a dark plate's markers, and the white faces of cards on it, counted as marks.
[[nodiscard]] PlateRegion withWhitePatches(const Reduced& coarse, PlateRegion region);

/// The photo's light upside down, for finding a pale animal before a dark plate as a dark one before a light plate.
struct UpturnedTones {
    /// By ratio: 0 for the lightest place before the plate, 1 for black, nearly equal steps for equal ratios. Half-way
    /// between body and plate then is the geometric mean, which a shaded belly still passes and a half transparent fin
    /// does not.
    Tone ratio;
    /// By difference: light turned and scaled, so that edges stay where they were.
    Tone difference;
};
[[nodiscard]] UpturnedTones upturnedTones(const Reduced& coarse, const PlateRegion& region);

}  // namespace ringrule
