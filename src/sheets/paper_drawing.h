// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QString>
#include <string_view>

class QPainter;
class QPointF;
class QRectF;

namespace ringrule {

// Everything here is in millimetres; the painter's units are millimetres.

struct TextStyle {
    double sizeMm = 3.2;  ///< of the letters' body; 3.2 mm is about 9 points
    bool bold = false;
    QColor ink = Qt::black;
};

/// Draws one line of text into `area`, aligned by Qt's flags. Text wider than the area is set smaller, down to
/// three fifths, then cut with "…".
void drawText(QPainter& painter, const QRectF& area, int flags, const QString& text, const TextStyle& style = {});

/// Draws paragraphs (Qt's subset of HTML), lines broken to the area's width. Returns their height.
double drawParagraphs(QPainter& painter, const QRectF& area, const QString& html, double sizeMm = 3.2);

/// Draws a marker upright, its black square's middle at `centre`: one shape, so that no seam shows between cells.
/// Precondition: the dictionary has that id.
void drawMarker(QPainter& painter, std::string_view dictionary, int id, const QPointF& centre, double sideMm);

/// Draws a black bar from `from` to the right, or down, to be measured from end to end with a steel rule; white notches
/// every 10 mm and numbers every 50. It is 3 mm thick, with numbers 7 mm.
void drawCheckBar(QPainter& painter, const QPointF& from, double lengthMm, bool down);

/// The longest of 200, 150, 100 and 50 mm that has room, or 0.
[[nodiscard]] double checkBarLength(double roomMm);

}  // namespace ringrule
