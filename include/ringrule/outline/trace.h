// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

struct TraceOptions {
    double reachPx = 300.0;  ///< how far from its first click a stretch may run: more takes longer
    double snapPx = 8.0;     ///< a click goes to the clearest edge within this distance; 0: it stays where it is
};

/// Assisted tracing: paths that follow the nearest edges of a photo (intelligent scissors, Mortensen & Barrett 1995,
/// SIGGRAPH Proc., 191–198). Made for one click, in about the time of a key press; then asked for every place of the
/// pointer. The photo is not needed any more once it is made. Cheap to copy.
class EdgeTrace {
public:
    /// Precondition: `fromPx` lies on the photo.
    EdgeTrace(const Photo& photo, PixelPoint fromPx, const TraceOptions& options = {});

    /// Where the trace begins: the click, moved to its edge.
    [[nodiscard]] PixelPoint from() const;

    /// The path to `targetPx`, both ends included, good to about a pixel; a straight line when the target is out of
    /// reach.
    [[nodiscard]] std::vector<PixelPoint> to(PixelPoint targetPx) const;

    /// Where `to` ends for this target: on the clearest edge nearby, or at the target itself when it is out of reach.
    [[nodiscard]] PixelPoint snapped(PixelPoint targetPx) const;

private:
    struct State;
    std::shared_ptr<const State> state_;
};

/// The path through all clicks in turn, set on the photo's edge at sub-pixel precision where an edge is seen and left
/// as it was traced elsewhere. Precondition: two clicks or more, all on the photo.
[[nodiscard]] std::vector<PixelPoint> traceThrough(const Photo& photo, std::span<const PixelPoint> clicksPx,
                                                   const TraceOptions& options = {});

/// The outline traced through clicks round a whole animal, back to the first one. Refuses with "trace-not-closed" when
/// the clicks do not go round an area or the path crosses itself.
[[nodiscard]] Outcome<Outline> traceOutline(const Photo& photo, std::span<const PixelPoint> clicksPx,
                                            const TraceOptions& options = {});

}  // namespace ringrule
