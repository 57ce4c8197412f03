// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "ringrule/geometry/point.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/midline/midline.h"
#include "ringrule/outcome.h"
#include "ringrule/outline/outline.h"
#include "ringrule/remark.h"

namespace ringrule {

enum class Shape { Unknown, Pipefish, Seahorse, Fish };
enum class View { Side, Front, Above, Mirror };

[[nodiscard]] std::string_view shapeName(Shape shape);  ///< "pipefish", "seahorse", "fish", "unknown"
[[nodiscard]] std::string_view viewName(View view);     ///< "side", "front", "above", "mirror"
[[nodiscard]] std::optional<Shape> shapeFromName(std::string_view name);
[[nodiscard]] std::optional<View> viewFromName(std::string_view name);

struct Landmark {
    PixelPoint atPx;
    double sdAlongPx = 0.0;  ///< standard deviation of its place along the midline
    bool movedByHand = false;
};

/// The points from which lengths are taken (terms of Dawson 1985 for pipefish, Lourie et al. 1999 for seahorses). What
/// could not be seen is absent.
struct Landmarks {
    std::optional<Landmark> snoutTip;
    std::optional<Landmark> coronet;   ///< seahorses only
    std::optional<Landmark> headEnd;   ///< rear of the opercle (pipefish), middle of the cleithral ring (seahorse)
    std::optional<Landmark> trunkEnd;  ///< last trunk ring
    std::optional<Landmark> tailEnd;   ///< base of the caudal fin (pipefish), tail tip (seahorse)
    bool ventralOnLeft = false;        ///< which side of the midline is the belly …
    bool ventralKnown = false;         ///< … if it could be told
};

enum class LandmarkName { SnoutTip, Coronet, HeadEnd, TrunkEnd, TailEnd };

struct LandmarkOptions {
    Shape shape = Shape::Unknown;  ///< Unknown: told from the outline
    View view = View::Side;
};

/// What was recognised: the midline walked from the head, the shape and the landmarks.
struct Anatomy {
    Shape shape = Shape::Unknown;
    Midline midline;  ///< from the snout
    Landmarks landmarks;
    PixelPoint ringToBellyPx{};         ///< seahorses: from the head end to the belly line, which the head hides
    std::vector<PixelPoint> pouchPx{};  ///< a seahorse's brood pouch, apart from the trunk; empty when none was seen
    std::vector<Remark> remarks;
};

/// The anatomy read from outline and midline. Refuses with "shape-not-clear" when it can be no long fish.
[[nodiscard]] Outcome<Anatomy> findLandmarks(const Photo& photo, const Outline& outline, const Midline& midline,
                                             const LandmarkOptions& options = {});

}  // namespace ringrule
