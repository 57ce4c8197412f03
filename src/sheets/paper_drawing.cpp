// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/paper_drawing.h"

#include <QAbstractTextDocumentLayout>
#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QTextDocument>
#include <algorithm>
#include <cassert>

#include "ringrule/optics/marker_pattern.h"

namespace ringrule {
namespace {

// Letters are laid out at this size and then drawn to scale: at a few units' size their widths would be rounded.
constexpr double kLayoutPx = 100.0;

QFont layoutFont(bool bold) {
    QFont font(QStringList{QStringLiteral("DejaVu Sans"), QStringLiteral("Liberation Sans"), QStringLiteral("Arial")});
    font.setPixelSize(static_cast<int>(kLayoutPx));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

}  // namespace

void drawText(QPainter& painter, const QRectF& area, int flags, const QString& text, const TextStyle& style) {
    const QFont font = layoutFont(style.bold);
    const QFontMetricsF metrics(font);
    constexpr double kSmallest = 0.6;
    const double wideMm = metrics.horizontalAdvance(text) * style.sizeMm / kLayoutPx;
    const double sizeMm = style.sizeMm * std::clamp(area.width() / std::max(wideMm, 1e-6), kSmallest, 1.0);
    const double scale = sizeMm / kLayoutPx;
    const QString shown = metrics.elidedText(text, Qt::ElideRight, area.width() / scale + 1.0);
    painter.save();
    painter.translate(area.topLeft());
    painter.scale(scale, scale);
    painter.setFont(font);
    painter.setPen(style.ink);
    painter.drawText(QRectF(0.0, 0.0, area.width() / scale, area.height() / scale), flags | Qt::TextDontClip, shown);
    painter.restore();
}

double drawParagraphs(QPainter& painter, const QRectF& area, const QString& html, double sizeMm) {
    const double scale = sizeMm / kLayoutPx;
    QTextDocument document;
    document.documentLayout()->setPaintDevice(nullptr);
    document.setDefaultFont(layoutFont(false));
    document.setDocumentMargin(0.0);
    document.setDefaultStyleSheet(
        QStringLiteral("h2 { font-size: 112px; margin-top: 100px; margin-bottom: 25px; }"
                       "p, li { margin-top: 0px; margin-bottom: 45px; }"));
    document.setHtml(html);
    document.setTextWidth(area.width() / scale);
    painter.save();
    painter.translate(area.topLeft());
    painter.scale(scale, scale);
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black);
    document.documentLayout()->draw(&painter, context);
    painter.restore();
    return document.size().height() * scale;
}

void drawMarker(QPainter& painter, std::string_view dictionary, int id, const QPointF& centre, double sideMm) {
    const auto pattern = markerPattern(dictionary, id);
    assert(pattern);
    QPainterPath cells;
    for (int row = 0; row < pattern->cells; ++row)
        for (int column = 0; column < pattern->cells; ++column)
            if (pattern->inkAt(row, column)) cells.addRect(column, row, 1, 1);
    painter.save();
    painter.translate(centre - QPointF(0.5 * sideMm, 0.5 * sideMm));
    painter.scale(sideMm / pattern->cells, sideMm / pattern->cells);
    painter.fillPath(cells.simplified(), Qt::black);
    painter.restore();
}

void drawCheckBar(QPainter& painter, const QPointF& from, double lengthMm, bool down) {
    const auto along = [&](double mm, double across) {
        return from + (down ? QPointF(across, mm) : QPointF(mm, across));
    };
    painter.fillRect(QRectF(along(0.0, 0.0), along(lengthMm, 3.0)), Qt::black);
    for (double mm = 10.0; mm < lengthMm - 5.0; mm += 10.0)
        painter.fillRect(QRectF(along(mm - 0.1, 0.0), along(mm + 0.1, 1.2)), Qt::white);
    for (double mm = 0.0; mm < lengthMm + 1.0; mm += 50.0) {
        const QPointF middle = along(mm, down ? 3.9 : 5.3);
        const QRectF area = down ? QRectF(middle.x(), middle.y() - 2.0, 11.0, 4.0)
                                 : QRectF(middle.x() - 10.0, middle.y() - 2.0, 20.0, 4.0);
        drawText(painter, area, Qt::AlignVCenter | (down ? Qt::AlignLeft : Qt::AlignHCenter),
                 QString::number(mm) + (mm > lengthMm - 1.0 ? QStringLiteral(" mm") : QString()), {2.6});
    }
}

double checkBarLength(double roomMm) {
    for (const double length : {200.0, 150.0, 100.0, 50.0})
        if (length <= roomMm) return length;
    return 0.0;
}

}  // namespace ringrule
