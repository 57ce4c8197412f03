// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/animal_paths.h"

#include <QPolygonF>
#include <algorithm>

namespace ringrule {
namespace {

QPolygonF polygonOf(const std::vector<PixelPoint>& points) {
    QPolygonF polygon;
    polygon.reserve(static_cast<qsizetype>(points.size()));
    for (const PixelPoint& point : points) polygon << QPointF(point.x, point.y);
    return polygon;
}

QPointF at(PixelPoint point) {
    return {point.x, point.y};
}

}  // namespace

QPainterPath outlinePath(const Outline& outline) {
    QPainterPath path;
    path.addPolygon(polygonOf(outline.boundaryPx));
    path.closeSubpath();
    for (const auto& hole : outline.holesPx) {
        path.addPolygon(polygonOf(hole));
        path.closeSubpath();
    }
    return path;
}

QPainterPath spinePath(const Midline& midline) {
    QPainterPath path;
    path.addPolygon(polygonOf(midline.spinePx));
    return path;
}

QPainterPath halfWidthTicks(const Midline& midline, int wanted) {
    QPainterPath path;
    const std::size_t n =
        std::min({midline.spinePx.size(), midline.leftHalfWidthPx.size(), midline.rightHalfWidthPx.size()});
    if (n < 3) return path;
    const std::size_t step = std::max<std::size_t>(1, n / static_cast<std::size_t>(std::max(1, wanted)));
    for (std::size_t k = step; k + 1 < n; k += step) {
        const PixelPoint along = midline.spinePx[k + 1] - midline.spinePx[k - 1];
        const double length = norm(along);
        if (!(length > 0.0)) continue;
        // Walking along (x, y) with y down, the left hand points to (y, -x).
        const PixelPoint left{along.y / length, -along.x / length};
        path.moveTo(at(midline.spinePx[k] + midline.leftHalfWidthPx[k] * left));
        path.lineTo(at(midline.spinePx[k] - midline.rightHalfWidthPx[k] * left));
    }
    return path;
}

}  // namespace ringrule
