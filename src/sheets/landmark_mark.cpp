// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/landmark_mark.h"

#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>

#include "ringrule/sheets/colours.h"

namespace ringrule {
unsigned landmarkColour(LandmarkName name) {
    switch (name) {
        case LandmarkName::SnoutTip:
            return colour::kVermilion;
        case LandmarkName::Coronet:
            return colour::kPurple;
        case LandmarkName::HeadEnd:
            return colour::kOrange;
        case LandmarkName::TrunkEnd:
            return colour::kGreen;
        case LandmarkName::TailEnd:
            return colour::kBlue;
    }
    return colour::kBlack;
}

std::string_view landmarkWords(LandmarkName name) {
    switch (name) {
        case LandmarkName::SnoutTip:
            return "snout tip";
        case LandmarkName::Coronet:
            return "coronet";
        case LandmarkName::HeadEnd:
            return "head end";
        case LandmarkName::TrunkEnd:
            return "trunk end";
        case LandmarkName::TailEnd:
            return "tail end";
    }
    return {};
}

const std::optional<Landmark>& landmarkOf(const Landmarks& landmarks, LandmarkName name) {
    switch (name) {
        case LandmarkName::SnoutTip:
            return landmarks.snoutTip;
        case LandmarkName::Coronet:
            return landmarks.coronet;
        case LandmarkName::HeadEnd:
            return landmarks.headEnd;
        case LandmarkName::TrunkEnd:
            return landmarks.trunkEnd;
        case LandmarkName::TailEnd:
            break;
    }
    return landmarks.tailEnd;
}

QPainterPath landmarkMark(LandmarkName name, double radius) {
    const double r = radius;
    QPainterPath path;
    switch (name) {
        case LandmarkName::SnoutTip:
            path.addEllipse(QPointF(0, 0), r, r);
            break;
        case LandmarkName::Coronet:
            path.addPolygon(QPolygonF({{0, -r}, {r, 0.8 * r}, {-r, 0.8 * r}}));
            break;
        case LandmarkName::HeadEnd:
            path.addRect(QRectF(-0.85 * r, -0.85 * r, 1.7 * r, 1.7 * r));
            break;
        case LandmarkName::TrunkEnd:
            path.addPolygon(QPolygonF({{0, -1.15 * r}, {1.15 * r, 0}, {0, 1.15 * r}, {-1.15 * r, 0}}));
            break;
        case LandmarkName::TailEnd:
            path.addPolygon(QPolygonF({{0, r}, {r, -0.8 * r}, {-r, -0.8 * r}}));
            break;
    }
    path.closeSubpath();
    return path;
}

void paintLandmarkMark(QPainter& painter, LandmarkName name, const QPointF& at, double radius) {
    painter.save();
    painter.translate(at);
    const QPainterPath path = landmarkMark(name, radius);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(QColor(0, 0, 0, 150), 0.62 * radius, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(Qt::white, 0.34 * radius, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(QColor(landmarkColour(name)));
    painter.drawPath(path);
    // The exact place: the centre dot.
    painter.setPen(Qt::NoPen);
    painter.setBrush(Qt::white);
    painter.drawEllipse(QPointF(0, 0), 0.16 * radius, 0.16 * radius);
    painter.restore();
}

}  // namespace ringrule
