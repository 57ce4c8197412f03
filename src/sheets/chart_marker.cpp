// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/chart_marker.h"

#include <QPolygonF>
#include <cmath>
#include <numbers>

#include "ringrule/sheets/colours.h"

namespace ringrule {
namespace {

QPolygonF regular(int corners, double radius, double turn) {
    QPolygonF polygon;
    for (int k = 0; k < corners; ++k) {
        const double angle = turn + 2.0 * std::numbers::pi * k / corners;
        polygon << QPointF(radius * std::sin(angle), -radius * std::cos(angle));
    }
    return polygon;
}

QPolygonF cross(double r) {
    const double t = 0.4 * r;
    return QPolygonF(
        {{-t, -r}, {t, -r}, {t, -t}, {r, -t}, {r, t}, {t, t}, {t, r}, {-t, r}, {-t, t}, {-r, t}, {-r, -t}, {-t, -t}});
}

QPolygonF star(double radius) {
    QPolygonF polygon;
    for (int k = 0; k < 10; ++k) {
        const double angle = std::numbers::pi * k / 5.0;
        const double r = k % 2 == 0 ? radius : 0.45 * radius;
        polygon << QPointF(r * std::sin(angle), -r * std::cos(angle));
    }
    return polygon;
}

}  // namespace

QColor seriesColour(int style, bool dark) {
    const QColor colour(colour::kLines[static_cast<std::size_t>(style) % colour::kLines.size()]);
    return dark ? colour.lighter(125) : colour;
}

QPainterPath seriesMarker(int style, double radius) {
    using std::numbers::pi;
    QPainterPath path;
    switch (style % 7) {
        case 0:
            path.addEllipse(QPointF(0, 0), radius, radius);
            break;
        case 1:
            path.addPolygon(regular(4, 1.2 * radius, pi / 4));
            break;
        case 2:
            path.addPolygon(regular(3, 1.35 * radius, 0.0));
            break;
        case 3:
            path.addPolygon(regular(4, 1.25 * radius, 0.0));
            break;
        case 4:
            path.addPolygon(regular(3, 1.35 * radius, pi));
            break;
        case 5:
            path.addPolygon(star(1.5 * radius));
            break;
        default:
            path.addPolygon(cross(1.2 * radius));
            break;
    }
    path.closeSubpath();
    return path;
}

}  // namespace ringrule
