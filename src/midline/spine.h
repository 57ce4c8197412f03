// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "midline/medial_axis.h"
#include "ringrule/midline/midline.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// The midline between the two sides of a body: at each station the middle of the chord across it, smoothed by local
/// quadratics, in rounds until the chords stand square on it, then carried along its own curve to both tips. Empty when
/// too few chords could be drawn.
[[nodiscard]] Midline spineThrough(const Outline& outline, const MedialPath& path);

}  // namespace ringrule
