// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "measure/body_in_mm.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/outline/outline.h"
#include "ringrule/remark.h"

namespace ringrule {

/// What the outline and midline say against a photo: small in frame, blurred.
[[nodiscard]] std::vector<Remark> photoChecks(const Outline& outline, const Anatomy& anatomy);

/// How the outline agrees with the body swept along its midline.
struct Sweep {
    double unsweptShare = 0.0;  ///< of the boundary behind a seahorse's head, its pouch left out: no chord reaches it
    bool endsEarly = false;     ///< the outline goes on far beyond the snout's end of the midline
};
[[nodiscard]] Sweep sweepOf(const Outline& outline, const Anatomy& anatomy);

/// Adds a remark that is not there yet.
void addRemark(std::vector<Remark>& remarks, Remark remark);

}  // namespace ringrule
