// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/optics/box_file.h"
#include "ringrule/optics/plate.h"
#include "ringrule/optics/scale.h"

namespace ringrule {

/// Width of plate that suits the lengths by which the outline layer tells animals from print and debris.
inline constexpr double kUsualPlateMm = 200.0;

/// The box with every length multiplied: a photo of it is the same photo, its outlines in pixels are the same outlines.
/// The small plates on which fry are photographed are searched as if they were of the usual width, for on them not only
/// the animals but print, debris and the reach of a shadow are small.
[[nodiscard]] Box enlarged(const Box& box, double factor);

/// The found plate with its markers where a scale puts them: to say again, on an enlarged box, what that scale says.
[[nodiscard]] FoundPlate asFitted(const FoundPlate& plate, const Box& box, const Scale& scale);

}  // namespace ringrule
