// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/tool_ink.h"

#include <QPainter>

#include "ringrule/sheets/colours.h"

namespace ringrule {

QPainterPath pathOf(const std::vector<PixelPoint>& points, bool closed) {
    QPainterPath path;
    if (points.empty()) return path;
    path.moveTo(pointOf(points.front()));
    for (const PixelPoint& point : points) path.lineTo(pointOf(point));
    if (closed) path.closeSubpath();
    return path;
}

void drawToolLine(QPainter& painter, const QPainterPath& path, double photoPxPerViewPx) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(QColor(0, 0, 0, 150), 4.0 * photoPxPerViewPx, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(QColor(colour::kOrange), 2.0 * photoPxPerViewPx, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
}

void drawToolDot(QPainter& painter, QPointF at, double photoPxPerViewPx) {
    painter.setPen(QPen(Qt::black, photoPxPerViewPx));
    painter.setBrush(QColor(colour::kOrange));
    painter.drawEllipse(at, 4.0 * photoPxPerViewPx, 4.0 * photoPxPerViewPx);
}

}  // namespace ringrule
