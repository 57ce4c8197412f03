// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/plate_drawing.h"

#include <QPainter>
#include <algorithm>

#include "sheets/paper_drawing.h"
#include "sheets/plate_ruler.h"

namespace ringrule {
namespace {

const QColor kDarkGround(0x26, 0x26, 0x26);

void drawLowerScale(QPainter& painter, const PlateLayout& plate, const PlateRuler& ruler, const QColor& ink) {
    const double foot = plate.heightMm - ruler.footMm();
    for (int mm = ruler.endMm(); mm <= static_cast<int>(plate.widthMm) - ruler.endMm(); ++mm) {
        const double length = ruler.tickMm(mm);
        painter.fillRect(QRectF(mm - 0.5 * ruler.strokeMm(), foot - length, ruler.strokeMm(), length), ink);
    }
    const double middle = plate.heightMm - 0.5 * (ruler.ticksMm() + ruler.stripMm()) - 0.4 * ruler.unitMm;
    for (const int mm : numbersOn(plate, PlateScale::Lower))
        drawText(painter, QRectF(mm - 10.0, middle - 3.0, 20.0, 6.0), Qt::AlignCenter, QString::number(mm),
                 {ruler.numberMm(), false, ink});
}

void drawLeftScale(QPainter& painter, const PlateLayout& plate, const PlateRuler& ruler, const QColor& ink) {
    for (int mm = ruler.endMm(); mm <= static_cast<int>(plate.heightMm) - ruler.endMm(); ++mm)
        painter.fillRect(QRectF(ruler.footMm(), mm - 0.5 * ruler.strokeMm(), ruler.tickMm(mm), ruler.strokeMm()), ink);
    for (const int mm : numbersOn(plate, PlateScale::Left))
        drawText(painter, QRectF(ruler.ticksMm() + 0.5 * ruler.unitMm, mm - 3.0, 12.0, 6.0),
                 Qt::AlignLeft | Qt::AlignVCenter, QString::number(mm), {ruler.numberMm(), false, ink});
}

}  // namespace

void drawPlate(QPainter& painter, const PlateLayout& plate, PlateTone tone) {
    const bool dark = tone == PlateTone::Dark;
    if (dark) painter.fillRect(QRectF(0.0, 0.0, plate.widthMm, plate.heightMm), kDarkGround);
    for (const PlateMarker& marker : plate.markers) {
        const QPointF centre(marker.centreMm.x, marker.centreMm.y);
        const double patch = marker.sideMm * 4.0 / 3.0;  // the marker with one cell of quiet about it
        if (dark) painter.fillRect(QRectF(centre - QPointF(0.5, 0.5) * patch, QSizeF(patch, patch)), Qt::white);
        drawMarker(painter, plate.dictionary, marker.id, centre, marker.sideMm);
    }
    const PlateRuler ruler(std::min(plate.widthMm, plate.heightMm));
    const QColor ink = dark ? QColor(Qt::white) : QColor(Qt::black);
    drawLowerScale(painter, plate, ruler, ink);
    drawLeftScale(painter, plate, ruler, ink);
}

}  // namespace ringrule
