// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "measure/body_in_mm.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/outline/outline.h"
#include "ringrule/remark.h"

namespace ringrule {

/// What the outline, midline and posture say against a photo: small in frame, blurred, outline that disagrees with the
/// body swept along the midline. `unswept` is `unsweptShare` of the two.
[[nodiscard]] std::vector<Remark> photoChecks(const Outline& outline, const Anatomy& anatomy, double unswept);

/// Share of the boundary, behind the head of a seahorse, that no chord of the midline reaches: what lies outside the
/// body swept along the midline, its pouch left out.
[[nodiscard]] double unsweptShare(const Outline& outline, const Anatomy& anatomy);

/// Adds a remark that is not there yet.
void addRemark(std::vector<Remark>& remarks, Remark remark);

}  // namespace ringrule
