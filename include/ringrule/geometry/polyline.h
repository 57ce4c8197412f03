// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

#include "ringrule/geometry/point.h"

namespace ringrule {

/// Arc length from the first point to each point; empty for no points.
template <class Frame>
[[nodiscard]] std::vector<double> arcLengths(std::span<const Point<Frame>> line) {
    std::vector<double> along;
    along.reserve(line.size());
    for (std::size_t i = 0; i < line.size(); ++i) {
        along.push_back(i == 0 ? 0.0 : along.back() + distance(line[i - 1], line[i]));
    }
    return along;
}

/// Length of an open polyline.
template <class Frame>
[[nodiscard]] double lengthOf(std::span<const Point<Frame>> line) {
    double total = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i) total += distance(line[i - 1], line[i]);
    return total;
}

/// Points in `count` even steps of arc on an open polyline, both ends kept. Precondition: two points or more, count
/// ≥ 2.
template <class Frame>
[[nodiscard]] std::vector<Point<Frame>> resampled(std::span<const Point<Frame>> line, std::size_t count) {
    const std::vector<double> along = arcLengths(line);
    std::vector<Point<Frame>> even;
    even.reserve(count);
    std::size_t k = 1;
    for (std::size_t i = 0; i < count; ++i) {
        const double target = along.back() * static_cast<double>(i) / static_cast<double>(count - 1);
        while (k + 1 < along.size() && along[k] < target) ++k;
        const double step = along[k] - along[k - 1];
        const double t = step > 0.0 ? std::clamp((target - along[k - 1]) / step, 0.0, 1.0) : 0.0;
        even.push_back(line[k - 1] * (1.0 - t) + line[k] * t);
    }
    return even;
}

/// The point at arc length `target`, held to the ends. Precondition: `along` = `arcLengths(line)`, two points or more.
template <class Frame>
[[nodiscard]] Point<Frame> pointAt(std::span<const Point<Frame>> line, std::span<const double> along, double target) {
    const auto above = std::upper_bound(along.begin(), along.end(), target);
    const auto k = std::clamp<std::ptrdiff_t>(above - along.begin(), 1, std::ssize(along) - 1);
    const auto i = static_cast<std::size_t>(k);
    const double step = along[i] - along[i - 1];
    const double t = step > 0.0 ? std::clamp((target - along[i - 1]) / step, 0.0, 1.0) : 0.0;
    return line[i - 1] * (1.0 - t) + line[i] * t;
}

/// Where on a polyline a point projects to.
template <class Frame>
struct Projection {
    double along = 0.0;     ///< arc length from the first point
    double distance = 0.0;  ///< from the polyline
    Point<Frame> at;
};

/// The nearest place on an open polyline. Precondition: two points or more.
template <class Frame>
[[nodiscard]] Projection<Frame> project(std::span<const Point<Frame>> line, Point<Frame> point) {
    Projection<Frame> best;
    best.distance = distance(line[0], point);
    best.at = line[0];
    double start = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Point<Frame> step = line[i] - line[i - 1];
        const double squared = dot(step, step);
        const double t = squared > 0.0 ? std::clamp(dot(point - line[i - 1], step) / squared, 0.0, 1.0) : 0.0;
        const Point<Frame> at = line[i - 1] + step * t;
        if (const double d = distance(at, point); d < best.distance) best = {start + t * norm(step), d, at};
        start += norm(step);
    }
    return best;
}

}  // namespace ringrule
