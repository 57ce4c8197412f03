// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/boundary_ray.h"

#include <algorithm>

namespace ringrule {
namespace {

constexpr std::ptrdiff_t kNear = 24;  ///< segments tried on both sides of the hint

struct Crossing {
    RayHit hit;
    bool outward = false;
};

void tryRange(std::span<const PixelPoint> boundary, PixelPoint from, PixelPoint direction, std::ptrdiff_t first,
              std::ptrdiff_t count, std::optional<Crossing>& best) {
    const auto n = std::ssize(boundary);
    std::ptrdiff_t i = ((first % n) + n) % n;
    PixelPoint a = boundary[static_cast<std::size_t>(i)] - from;
    double sideA = cross(direction, a);
    for (std::ptrdiff_t k = 0; k < count; ++k) {
        const std::ptrdiff_t next = i + 1 == n ? 0 : i + 1;
        const PixelPoint b = boundary[static_cast<std::size_t>(next)] - from;
        const double sideB = cross(direction, b);
        if ((sideA > 0.0) != (sideB > 0.0)) {
            const double t = sideA / (sideA - sideB);
            const double along = dot(direction, a + (b - a) * t);
            if (along > 0.0 && (!best || along < best->hit.distance))
                best = Crossing{{along, static_cast<std::size_t>(i)}, sideB > sideA};
        }
        a = b;
        sideA = sideB;
        i = next;
    }
}

}  // namespace

std::optional<RayHit> firstExit(std::span<const PixelPoint> boundary, PixelPoint from, PixelPoint direction,
                                std::optional<std::size_t> hint) {
    std::optional<Crossing> best;
    const auto n = std::ssize(boundary);
    if (hint && n > 4 * kNear) {
        tryRange(boundary, from, direction, static_cast<std::ptrdiff_t>(*hint) - kNear, 2 * kNear, best);
    }
    if (!best) tryRange(boundary, from, direction, 0, n, best);
    if (!best || !best->outward) return std::nullopt;
    return best->hit;
}

}  // namespace ringrule
