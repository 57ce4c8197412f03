// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// The midline carried on past ends that are thinner than the photo's blur. Such an end is too faint for an outline,
/// but a dark thread across which light dips can still be followed, step by step, until the dip falls clearly below
/// what it was.
[[nodiscard]] Midline withFadingEnds(const Photo& photo, const Outline& outline, Midline midline);

}  // namespace ringrule
