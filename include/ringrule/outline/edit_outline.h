// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

// Corrections by hand. All are pure: the outline that was given stays as it is, so undo is keeping it. An edited
// outline says `Remark::OutlinedByHand`, no longer says that it is doubtful (a person looked), and its `edgeSdPx` is
// that of its seen and its drawn parts together: a drawn edge is as good as the hand, `kHandSdPx`.

inline constexpr double kHandSdPx = 1.0;

/// The outline with the boundary place nearest to `grabPx` drawn to `toPx`. Neighbours within `reachPx` along the
/// boundary follow, the less the farther they are. A hole's rim is pulled when it is nearer. Refuses with
/// "outline-crosses" when the pulled boundary would cross itself.
[[nodiscard]] Outcome<Outline> pulled(const Outline& outline, PixelPoint grabPx, PixelPoint toPx, double reachPx);

/// The outline with a stretch of its boundary (or of a hole's rim) replaced by `pathPx`, whose ends go to the nearest
/// places of the boundary. Of the two stretches between them the one that lies nearer to the path is replaced. Refuses
/// with "outline-crosses" when the new boundary would cross itself. Precondition: two points or more.
[[nodiscard]] Outcome<Outline> withStretch(const Outline& outline, std::span<const PixelPoint> pathPx);

/// The pieces left when the outline is cut along a line, straight or bent, left to right; pieces under a hundredth of
/// the area are dropped. Two animals that touch become two by one line; of two that cross, the upper one is freed by a
/// line on either side, and the two parts of the lower one are joined again by `joined`. A gap between two animals that
/// touch twice is a hole before and belongs to the background after. Refuses with "cut-misses" when the line does not
/// part the outline.
[[nodiscard]] Outcome<std::vector<Outline>> cutAlong(const Outline& outline, std::span<const PixelPoint> linePx);

/// One outline out of two parts of an animal, with the gap between their facing ends bridged straight. Refuses with
/// "join-too-far" when the gap is longer than `longestGapPx`, or when the outlines overlap.
[[nodiscard]] Outcome<Outline> joined(const Outline& one, const Outline& other, double longestGapPx);

/// The outline with what lies inside `rimPx` taken out as background seen through a curl. Refuses with
/// "outline-crosses" when the rim crosses itself or does not lie inside the boundary. Precondition: three points or
/// more.
[[nodiscard]] Outcome<Outline> withHole(const Outline& outline, std::span<const PixelPoint> rimPx);

/// The outline with the hole round `insidePx` filled; unchanged when there is none.
[[nodiscard]] Outline withoutHole(const Outline& outline, PixelPoint insidePx);

}  // namespace ringrule
