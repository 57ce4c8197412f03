// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainterPath>

#include "ringrule/midline/midline.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// The outline with its holes, in pixels of the photo.
[[nodiscard]] QPainterPath outlinePath(const Outline& outline);

/// The spine from end to end.
[[nodiscard]] QPainterPath spinePath(const Midline& midline);

/// Lines across the body, from edge to edge, about `wanted` of them in even steps.
[[nodiscard]] QPainterPath halfWidthTicks(const Midline& midline, int wanted = 28);

}  // namespace ringrule
