// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

namespace ringrule {

// Frames, said once.
//
// PixelFrame: pixels of the photo as stored after EXIF orientation; the centre of the first pixel is (0, 0), x right, y down.
// PlateFrame: millimetres on the scale plate; origin at its top-left corner, x right, y down.
// AnimalFrame: millimetres on the animal's mid-plane, parallel to the plate; the same axes, origin opposite the plate's.
struct PixelFrame {};
struct PlateFrame {};
struct AnimalFrame {};

/// A point (or a difference of two) in a frame. Points of different frames do not mix.
template <class Frame>
struct Point {
    double x = 0.0;
    double y = 0.0;

    friend constexpr bool operator==(Point, Point) = default;
    friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
    friend constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
    friend constexpr Point operator*(Point a, double k) { return {a.x * k, a.y * k}; }
    friend constexpr Point operator*(double k, Point a) { return a * k; }
};

using PixelPoint = Point<PixelFrame>;
using PlatePoint = Point<PlateFrame>;
using AnimalPoint = Point<AnimalFrame>;

template <class Frame>
[[nodiscard]] constexpr double dot(Point<Frame> a, Point<Frame> b) {
    return a.x * b.x + a.y * b.y;
}

/// z of the cross product: positive when b lies clockwise of a as seen on the photo (y down).
template <class Frame>
[[nodiscard]] constexpr double cross(Point<Frame> a, Point<Frame> b) {
    return a.x * b.y - a.y * b.x;
}

template <class Frame>
[[nodiscard]] double norm(Point<Frame> a) {
    return std::sqrt(a.x * a.x + a.y * a.y);  // pixels and millimetres never overflow, and hypot takes five times as long
}

template <class Frame>
[[nodiscard]] double distance(Point<Frame> a, Point<Frame> b) {
    return norm(b - a);
}

}  // namespace ringrule
