// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// Signed area of a closed polygon (not repeated at the end) by the shoelace formula; positive when it runs clockwise
/// as seen on the photo (y down).
template <class Frame>
[[nodiscard]] double signedArea(std::span<const Point<Frame>> polygon) {
    double twice = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
    return 0.5 * twice;
}

/// Length of the closed outline.
template <class Frame>
[[nodiscard]] double perimeter(std::span<const Point<Frame>> polygon) {
    double total = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) total += distance(polygon[i], polygon[(i + 1) % polygon.size()]);
    return total;
}

/// Whether the point lies inside, by crossings of a ray to the right.
template <class Frame>
[[nodiscard]] bool contains(std::span<const Point<Frame>> polygon, Point<Frame> point) {
    bool inside = false;
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const Point<Frame> a = polygon[i];
        const Point<Frame> b = polygon[j];
        if ((a.y > point.y) != (b.y > point.y) && point.x < (b.x - a.x) * (point.y - a.y) / (b.y - a.y) + a.x) {
            inside = !inside;
        }
    }
    return inside;
}

/// The closed outline in even steps of about `stepLength`, at least eight. Precondition: three points or more.
template <class Frame>
[[nodiscard]] std::vector<Point<Frame>> resampledClosed(std::span<const Point<Frame>> polygon, double stepLength) {
    const double total = perimeter(polygon);
    const auto count = static_cast<std::size_t>(std::max(8L, std::lround(total / stepLength)));
    std::vector<Point<Frame>> even;
    even.reserve(count);
    std::size_t k = 0;
    double start = 0.0;
    double step = distance(polygon[0], polygon[1]);
    for (std::size_t i = 0; i < count; ++i) {
        const double target = total * static_cast<double>(i) / static_cast<double>(count);
        while (k + 1 < polygon.size() && start + step < target) {
            start += step;
            ++k;
            step = distance(polygon[k], polygon[(k + 1) % polygon.size()]);
        }
        const double t = step > 0.0 ? std::min(1.0, (target - start) / step) : 0.0;
        even.push_back(polygon[k] * (1.0 - t) + polygon[(k + 1) % polygon.size()] * t);
    }
    return even;
}

/// The closed outline without the small loops where it crosses itself: from one side of a crossing to the other within
/// `most` sides, the points between give way to the crossing. Larger crossings stay.
template <class Frame>
[[nodiscard]] std::vector<Point<Frame>> withoutCurls(std::span<const Point<Frame>> polygon, std::size_t most) {
    const std::size_t n = polygon.size();
    std::vector<Point<Frame>> points(polygon.begin(), polygon.end());
    std::vector<bool> gone(n, false);
    bool any = false;
    for (std::size_t i = 0; i < n; ++i) {
        const Point<Frame> from = points[i];
        const Point<Frame> side = points[(i + 1) % n] - from;
        for (std::size_t k = std::min(most, n / 4); !gone[i] && k >= 2; --k) {
            const Point<Frame> a = points[(i + k) % n] - from;
            const Point<Frame> b = points[(i + k + 1) % n] - from;
            const double sideA = cross(side, a);
            const double sideB = cross(side, b);
            if ((sideA > 0.0) == (sideB > 0.0)) continue;
            const Point<Frame> at = a + (b - a) * (sideA / (sideA - sideB));
            const double along = dot(at, side);
            if (along <= 0.0 || along > dot(side, side)) continue;
            points[(i + 1) % n] = from + at;
            for (std::size_t j = 2; j <= k; ++j) gone[(i + j) % n] = any = true;
            break;
        }
    }
    if (!any) return points;
    std::vector<Point<Frame>> simple;
    for (std::size_t i = 0; i < n; ++i) {
        if (!gone[i]) simple.push_back(points[i]);
    }
    return simple;
}

}  // namespace ringrule
