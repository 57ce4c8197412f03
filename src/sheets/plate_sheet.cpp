// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/plate_sheet.h"

#include <QPainter>
#include <algorithm>
#include <system_error>

#include "ringrule/error.h"
#include "ringrule/optics/box_writer.h"
#include "sheets/paper_drawing.h"
#include "sheets/paper_pages.h"
#include "sheets/plate_drawing.h"
#include "sheets/plate_notes.h"
#include "sheets/plate_tiles.h"

namespace ringrule {
namespace {

using namespace sheet_frame;

const QColor kGuide(0x80, 0x80, 0x80);
constexpr double kGuideMm = 0.12;

/// One sheet's part of the plate, in the plate's frame.
struct Tile {
    int number = 1;
    QRectF part;            ///< between the cuts
    bool tabLeft = false;   ///< glued under the sheet to the left
    bool tabAbove = false;  ///< … or above
    bool joinRight = false;
    bool joinBelow = false;

    [[nodiscard]] QRectF printed() const {
        return part.adjusted(tabLeft ? -kTabMm : 0.0, tabAbove ? -kTabMm : 0.0, 0.0, 0.0);
    }
};

std::vector<Tile> tileList(const PlateTiles& tiles) {
    std::vector<Tile> list;
    for (int row = 0; row < tiles.rows(); ++row) {
        for (int column = 0; column < tiles.columns(); ++column) {
            const auto x = static_cast<std::size_t>(column), y = static_cast<std::size_t>(row);
            Tile tile;
            tile.number = static_cast<int>(list.size()) + 1;
            tile.part = QRectF(QPointF(tiles.cutsXMm[x], tiles.cutsYMm[y]),
                               QPointF(tiles.cutsXMm[x + 1], tiles.cutsYMm[y + 1]));
            tile.tabLeft = column > 0;
            tile.tabAbove = row > 0;
            tile.joinRight = column + 1 < tiles.columns();
            tile.joinBelow = row + 1 < tiles.rows();
            list.push_back(tile);
        }
    }
    return list;
}

QRectF pageOf(Paper paper, bool landscape) {
    const PaperSize size = paperSize(paper);
    return landscape ? QRectF(0, 0, size.heightMm, size.widthMm) : QRectF(0, 0, size.widthMm, size.heightMm);
}

/// Where the plate goes on the page.
QRectF plateArea(const QRectF& page) {
    return page.adjusted(kMarginMm, kMarginMm + kHeaderMm, -kMarginMm - kBarColumnMm, -kMarginMm - kFooterMm);
}

void drawGuide(QPainter& painter, const QPointF& from, const QPointF& to) {
    painter.setPen(QPen(kGuide, kGuideMm));
    painter.drawLine(from, to);
}

/// Short lines outside the plate that carry its edges on, so that a cut can be laid on after the outline is gone.
void drawCropMarks(QPainter& painter, const QRectF& part) {
    for (const double x : {part.left(), part.right()}) {
        drawGuide(painter, {x, part.top() - 5.0}, {x, part.top() - 1.5});
        drawGuide(painter, {x, part.bottom() + 1.5}, {x, part.bottom() + 5.0});
    }
    for (const double y : {part.top(), part.bottom()}) {
        drawGuide(painter, {part.left() - 5.0, y}, {part.left() - 1.5, y});
        drawGuide(painter, {part.right() + 1.5, y}, {part.right() + 5.0, y});
    }
}

void drawRing(QPainter& painter, const QPointF& centre) {
    painter.setPen(QPen(Qt::black, 0.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(centre, 1.5, 1.5);
    painter.drawLine(centre - QPointF(2.2, 0), centre + QPointF(2.2, 0));
    painter.drawLine(centre - QPointF(0, 2.2), centre + QPointF(0, 2.2));
}

/// Rings on the lines along which sheets meet, just off the plate.
void drawJoinMarks(QPainter& painter, const Tile& tile) {
    constexpr double kOff = 3.2;
    const QRectF& part = tile.part;
    const auto beside = [&](double x) {
        if (!tile.tabAbove) drawRing(painter, {x, part.top() - kOff});
        if (!tile.joinBelow) drawRing(painter, {x, part.bottom() + kOff});
    };
    const auto above = [&](double y) {
        if (!tile.tabLeft) drawRing(painter, {part.left() - kOff, y});
        if (!tile.joinRight) drawRing(painter, {part.right() + kOff, y});
    };
    if (tile.tabLeft) beside(part.left());
    if (tile.joinRight) beside(part.right());
    if (tile.tabAbove) above(part.top());
    if (tile.joinBelow) above(part.bottom());
}

void drawTab(QPainter& painter, const QRectF& tab, const QString& words, bool upright) {
    painter.fillRect(tab, QColor(0xDD, 0xDD, 0xDD));
    painter.save();
    painter.translate(tab.center());
    if (upright) painter.rotate(-90.0);
    const double length = upright ? tab.height() : tab.width();
    drawText(painter, QRectF(-0.5 * length, -3.0, length, 6.0), Qt::AlignCenter, words,
             {3.2, false, QColor(0x44, 0x44, 0x44)});
    painter.restore();
}

void drawTabs(QPainter& painter, const Tile& tile, int columns) {
    const QRectF& part = tile.part;
    if (tile.tabLeft)
        drawTab(painter, QRectF(part.left() - kTabMm, part.top(), kTabMm, part.height()),
                QStringLiteral("glue under sheet %1").arg(tile.number - 1), true);
    if (tile.tabAbove)
        drawTab(painter, QRectF(part.left(), part.top() - kTabMm, part.width(), kTabMm),
                QStringLiteral("glue under sheet %1").arg(tile.number - columns), false);
}

/// The sheet's part of the plate with its guides; the painter's origin is the plate's.
void drawPart(QPainter& painter, const Box& box, const Tile& tile, const PlateTiles& tiles, PlateTone tone) {
    drawTabs(painter, tile, tiles.columns());
    painter.save();
    // A little of the plate goes on under the neighbour, so that a cut a hair short shows no gap.
    constexpr double kBleed = 1.0;
    painter.setClipRect(tile.part.adjusted(tile.tabLeft ? -kBleed : 0.0, tile.tabAbove ? -kBleed : 0.0, 0.0, 0.0));
    drawPlate(painter, box.plate, tone);
    painter.restore();
    painter.setPen(QPen(kGuide, kGuideMm));
    const QRectF& part = tile.part;
    if (!tile.tabLeft) painter.drawLine(part.topLeft(), part.bottomLeft());
    if (!tile.joinRight) painter.drawLine(part.topRight(), part.bottomRight());
    if (!tile.tabAbove) painter.drawLine(part.topLeft(), part.topRight());
    if (!tile.joinBelow) painter.drawLine(part.bottomLeft(), part.bottomRight());
    drawCropMarks(painter, tile.part);
    drawJoinMarks(painter, tile);
}

QString sizeWords(const PlateLayout& plate) {
    return QStringLiteral("%1 × %2 mm").arg(plate.widthMm).arg(plate.heightMm);
}

void drawHeader(QPainter& painter, const QRectF& page, const Box& box, const QString& right) {
    const QRectF line(kMarginMm, kMarginMm - 3.0, page.width() - 2.0 * kMarginMm, 5.0);
    drawText(painter, line, Qt::AlignLeft | Qt::AlignVCenter,
             QStringLiteral("Scale plate %1 · %2").arg(sizeWords(box.plate), QString::fromStdString(box.name)),
             {4.0, true});
    drawText(painter, line, Qt::AlignRight | Qt::AlignVCenter, right, {2.8});
}

QString sheetWords(const Box& box, const Tile& tile, const PlateTiles& tiles, const PlateSheetOptions& options) {
    return QStringLiteral("sheet %1 of %2 · %3 · %4 · markers 0–%5 of %6")
        .arg(tile.number)
        .arg(tiles.sheets())
        .arg(QString::fromUtf8(paperName(options.paper).data()))
        .arg(options.tone == PlateTone::Dark ? QStringLiteral("dark") : QStringLiteral("pale"))
        .arg(box.plate.markers.size() - 1)
        .arg(QString::fromStdString(box.plate.dictionary));
}

void drawSheet(PaperPages& pages, const Box& box, const Tile& tile, const PlateTiles& tiles,
               const PlateSheetOptions& options) {
    pages.begin(options.paper, tiles.landscape);
    QPainter& painter = pages.painter();
    const QRectF page = pageOf(options.paper, tiles.landscape);
    const QRectF area = plateArea(page);
    drawHeader(painter, page, box, sheetWords(box, tile, tiles, options));

    QRectF printed = tile.printed();
    const QPointF origin = area.center() - printed.center();
    painter.save();
    painter.translate(origin);
    drawPart(painter, box, tile, tiles, options.tone);
    painter.restore();
    printed.translate(origin);

    const double across = checkBarLength(page.width() - 2.0 * kMarginMm);
    const double down = checkBarLength(area.height());
    const double foot = area.bottom() + 7.0;
    drawCheckBar(painter, {kMarginMm, foot}, across, false);
    if (down > 0.0) drawCheckBar(painter, {printed.right() + 6.5, area.center().y() - 0.5 * down}, down, true);
    drawParagraphs(painter, QRectF(kMarginMm, foot + 9.5, page.width() - 2.0 * kMarginMm, 14.0),
                   barNote(across, down, options), 2.9);
}

void drawNotes(PaperPages& pages, const Box& box, const PlateTiles& tiles, const PlateSheetOptions& options) {
    pages.begin(options.paper, false);
    const QRectF page = pageOf(options.paper, false);
    drawHeader(pages.painter(), page, box, QStringLiteral("how to make it"));
    drawParagraphs(pages.painter(), page.adjusted(kMarginMm + 5.0, kMarginMm + 6.0, -kMarginMm - 5.0, -kMarginMm),
                   makingNotes(box, tiles, options), 3.5);
}

}  // namespace

int writePlate(const Box& box, const std::filesystem::path& pdf, const std::filesystem::path& boxFile,
               const PlateSheetOptions& options) {
    std::error_code error;
    if (std::filesystem::exists(boxFile, error))
        throw Error(ErrorKind::BadUse,
                    "there is a box file already, which may hold a lens and media: name another, or remove it",
                    boxFile.string());
    const PlateTiles tiles = tilesOf(box.plate, options.paper);
    PaperPages pages(QStringLiteral("Scale plate %1").arg(sizeWords(box.plate)));
    for (const Tile& tile : tileList(tiles)) drawSheet(pages, box, tile, tiles, options);
    drawNotes(pages, box, tiles, options);
    writeTogether({{boxFile, QByteArray::fromStdString(boxText(box))}, {pdf, pages.finished()}});
    return tiles.sheets();
}

}  // namespace ringrule
