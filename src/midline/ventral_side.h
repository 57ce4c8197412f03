// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "midline/eye.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// Which side of a straight-bodied fish is the belly: positive for the left side, its size how sure (2 and more: sure).
/// Told from the dorsal fin, faint and short beside the body's edge, from the flanks' shade (backs are darker) and from
/// the eye, which lies above the middle; 0 where the fin is faint and the other two do not agree.
[[nodiscard]] double ventralLeftScore(const Photo& photo, const Outline& outline, const Midline& midline,
                                      const EyeSpot& eye);

}  // namespace ringrule
