// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// Where a ray from inside a body leaves it.
struct RayHit {
    double distance = 0.0;
    std::size_t segment = 0;  ///< from boundary point `segment` to the next
};

/// The first crossing of a ray with a closed boundary that runs clockwise as seen; nothing when that crossing leads
/// into the body, which says that the ray began outside. With a `hint` the segments near it are tried first; the rest
/// only when none of them is met. `direction` is a unit vector.
[[nodiscard]] std::optional<RayHit> firstExit(std::span<const PixelPoint> boundary, PixelPoint from,
                                              PixelPoint direction, std::optional<std::size_t> hint = {});

}  // namespace ringrule
