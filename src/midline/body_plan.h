// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "midline/eye.h"
#include "midline/width_profile.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// A place along the body in shares of the midline's length from the snout.
struct Station {
    double share = 0.0;
    double sdShare = 0.0;
    bool seen = false;  ///< a feature of the outline, not only the usual proportion
};

/// Landmarks of a straight-bodied fish: snout tip, rear of the opercle, last trunk ring, base of the caudal fin.
[[nodiscard]] Landmarks pipefishLandmarks(const Photo& photo, const Outline& outline, const Midline& midline,
                                          const EyeSpot& eye, View view, std::vector<Remark>& remarks);

/// Landmarks of another long fish: its caudal fin is opaque and is cut off behind the narrowest part of the tail's
/// stalk.
[[nodiscard]] Landmarks fishLandmarks(const Outline& outline, const Midline& midline, const EyeSpot& eye,
                                      std::vector<Remark>& remarks);

/// The anatomy of a seahorse from the side. Its midline becomes the protocol's own line: straight from the snout tip to
/// the cleithral ring, then along trunk and tail (Lourie et al. 1999).
[[nodiscard]] Outcome<Anatomy> seahorseAnatomy(const Outline& outline, const Midline& midline);

/// Head-on or from behind: only the trunk's reach along the body can be told.
[[nodiscard]] Landmarks seahorseFrontLandmarks(const Midline& midline);

/// A landmark on the midline.
[[nodiscard]] Landmark landmarkAt(const Midline& midline, double share, double sdShare);

}  // namespace ringrule
