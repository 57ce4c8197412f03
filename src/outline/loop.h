// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

using Loop = std::vector<PixelPoint>;  ///< closed, not repeated at the end

/// A place on a closed loop: on the way from point `segment` to the next.
struct LoopPlace {
    std::size_t segment = 0;
    double share = 0.0;  ///< of that way, 0 … 1
    PixelPoint atPx;
    double distancePx = 0.0;  ///< from the point it was asked for
};

/// The nearest place. Precondition: three points or more.
[[nodiscard]] LoopPlace nearestPlace(const Loop& loop, PixelPoint to);

/// The points of the loop strictly between two places, walked forward; both places in the same segment, `to` before
/// `from`: nearly all of it.
[[nodiscard]] std::vector<PixelPoint> between(const Loop& loop, const LoopPlace& from, const LoopPlace& to);

/// Mean distance from one point to the next.
[[nodiscard]] double meanStepPx(const Loop& loop);

/// An open path in even steps of about `stepPx`, both ends kept.
[[nodiscard]] std::vector<PixelPoint> evenPath(std::span<const PixelPoint> path, double stepPx);

/// Where two segments cross, as the share of the way from a to b and of that from c to d; nothing when they do not.
struct SegmentCrossing {
    double shareAb = 0.0;
    double shareCd = 0.0;
};
[[nodiscard]] std::optional<SegmentCrossing> crossingOf(PixelPoint a, PixelPoint b, PixelPoint c, PixelPoint d);

/// Whether the closed loop crosses itself.
[[nodiscard]] bool crossesItself(const Loop& loop);

/// Whether two closed loops cross.
[[nodiscard]] bool loopsCross(const Loop& one, const Loop& other);

/// The outline after `drawnPx` of its boundary were drawn by hand: area, edge and remarks brought up to date, the
/// boundary turned clockwise and holes counter-clockwise.
[[nodiscard]] Outline drawnByHand(Outline outline, double drawnPx);

/// "outline-crosses".
[[nodiscard]] Refusal crossesRefusal();

}  // namespace ringrule
