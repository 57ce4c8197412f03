// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "midline/width_profile.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"

namespace ringrule {

/// Where a tail ends within a caudal fin that the outline took in: a fin's rays begin beside the last bone, so the
/// outline flares before the body ends; the body is the denser of the two, and along the midline the light steps from
/// one to the other. The share of the midline where the step is half done, or nothing when body and fin look alike.
/// `flareShare` is where the outline begins to flare, `endShare` where it ends.
[[nodiscard]] std::optional<double> bodyEndInFin(const Photo& photo, const Midline& midline,
                                                 const WidthProfile& profile, double flareShare, double endShare);

}  // namespace ringrule
