// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"

namespace ringrule {

/// The darkest round spot within a lighter ring near one end of a body.
struct EyeSpot {
    double share = 0.0;     ///< of the midline's length from its front
    double offset = 0.0;    ///< across it, −1 … 1, positive to the left
    double strength = 0.0;  ///< ring less centre, against the spread of skin around; 0: none
};

/// The eye in the front part of the midline, between two shares of its length.
[[nodiscard]] EyeSpot findEye(const Photo& photo, const Midline& midline, double fromShare, double toShare);

}  // namespace ringrule
