// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainterPath>
#include <vector>

#include "ringrule/geometry/point.h"

class QPainter;

namespace ringrule {

[[nodiscard]] inline PixelPoint pixelOf(QPointF at) {
    return {at.x(), at.y()};
}
[[nodiscard]] inline QPointF pointOf(PixelPoint at) {
    return {at.x, at.y};
}
[[nodiscard]] QPainterPath pathOf(const std::vector<PixelPoint>& points, bool closed = false);

/// Draws a line that a tool is drawing, seen on light and dark ground.
void drawToolLine(QPainter& painter, const QPainterPath& path, double photoPxPerViewPx);
/// Draws a place that was clicked.
void drawToolDot(QPainter& painter, QPointF at, double photoPxPerViewPx);

}  // namespace ringrule
