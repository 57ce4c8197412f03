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

/// The photo's light upside down: 1 for black, 0 for the lightest place before the plate. In it a pale animal before a
/// dark plate is a dark one before a light plate, with its edges where they were, for light is only turned and scaled.
[[nodiscard]] Tone upturnedTone(const Reduced& coarse, const PlateRegion& region);

}  // namespace ringrule
