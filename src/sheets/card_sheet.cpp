// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/card_sheet.h"

#include <QPainter>
#include <algorithm>

#include "ringrule/error.h"
#include "ringrule/optics/marker_pattern.h"
#include "sheets/paper_drawing.h"
#include "sheets/paper_pages.h"

namespace ringrule {
namespace {

constexpr double kMarginMm = 10.0;
constexpr double kHeaderMm = 9.0;
constexpr double kFooterMm = 17.0;
constexpr double kSmallestMarkerMm = 6.0;
constexpr double kLargestMarkerMm = 40.0;

// Parts of a card in marker sides. Writing ends 1.14 sides from the marker: as far as print on a card is looked for.
constexpr double kQuiet = 0.2;  // white about the marker; a cell is a seventh
constexpr double kTextFrom = 1.34;
constexpr double kTextWidth = 1.0;
constexpr double kCardWidth = 2.5;
constexpr double kCardHeight = 1.0 + 2.0 * kQuiet;

struct Grid {
    int columns = 0;
    int rows = 0;
    QPointF corner;
    QSizeF card;

    [[nodiscard]] int cards() const { return columns * rows; }
    [[nodiscard]] QRectF place(int index) const {
        return {corner + QPointF(index % columns * card.width(), index / columns * card.height()), card};
    }
};

Grid gridFor(const CardSheetOptions& options) {
    const PaperSize paper = paperSize(options.paper);
    const double width = paper.widthMm - 2.0 * kMarginMm;
    const double height = paper.heightMm - 2.0 * kMarginMm - kHeaderMm - kFooterMm;
    Grid grid;
    grid.card = QSizeF(kCardWidth, kCardHeight) * options.markerMm;
    grid.columns = static_cast<int>(width / grid.card.width());
    grid.rows = static_cast<int>(height / grid.card.height());
    grid.corner = {kMarginMm + 0.5 * (width - grid.columns * grid.card.width()), kMarginMm + kHeaderMm};
    return grid;
}

void drawCard(QPainter& painter, const QRectF& place, int number, const QString& name, double markerMm) {
    drawMarker(painter, kCardDictionary, number, place.topLeft() + QPointF(kQuiet + 0.5, kQuiet + 0.5) * markerMm,
               markerMm);
    const auto area = [&](double top, double height) {
        return QRectF(place.left() + kTextFrom * markerMm, place.top() + top * markerMm, kTextWidth * markerMm,
                      height * markerMm);
    };
    const bool named = !name.isEmpty();
    drawText(painter, named ? area(0.2, 0.6) : area(0.2, 1.0), Qt::AlignCenter, QString::number(number),
             {(named ? 0.55 : 0.62) * markerMm, true});
    if (named) drawText(painter, area(0.82, 0.36), Qt::AlignCenter, name, {0.26 * markerMm});
}

void drawCutLines(QPainter& painter, const Grid& grid, int cards) {
    painter.setPen(QPen(QColor(0xA0, 0xA0, 0xA0), 0.1));
    painter.setBrush(Qt::NoBrush);
    for (int i = 0; i < cards; ++i) painter.drawRect(grid.place(i));
}

void drawWords(QPainter& painter, const PaperSize& paper, int sheet, int sheets, const CardSheetOptions& options) {
    const QRectF head(kMarginMm, kMarginMm - 3.0, paper.widthMm - 2.0 * kMarginMm, 5.0);
    drawText(painter, head, Qt::AlignLeft | Qt::AlignVCenter, QStringLiteral("Animal cards"), {4.0, true});
    drawText(painter, head, Qt::AlignRight | Qt::AlignVCenter,
             QStringLiteral("sheet %1 of %2 · %3 · markers of %4 mm, %5")
                 .arg(sheet)
                 .arg(sheets)
                 .arg(QString::fromUtf8(paperName(options.paper).data()))
                 .arg(options.markerMm)
                 .arg(QString::fromUtf8(kCardDictionary.data())),
             {2.8});
    drawParagraphs(
        painter, QRectF(kMarginMm, paper.heightMm - kMarginMm - kFooterMm + 3.0, head.width(), kFooterMm - 3.0),
        QStringLiteral(
            "<p>Print at 100 % on matt white paper. Cut along the lines, leave 6 mm between cards in a "
            "<b>matt</b> laminating pouch, and cut out with a sealed rim of 3 mm all round. One card lies flat on the "
            "plate, beside the animal and clear of it, with its whole number in sight. A number belongs to one "
            "animal for life: a wrong card is a wrong animal, so read it aloud before each photo.</p>"),
        2.9);
}

}  // namespace

int writeCards(const std::vector<int>& numbers, const std::filesystem::path& pdf, const CardSheetOptions& options) {
    if (numbers.empty()) throw Error(ErrorKind::BadUse, "no card numbers were given, as in 1-12");
    if (!(options.markerMm >= kSmallestMarkerMm && options.markerMm <= kLargestMarkerMm))
        throw Error(ErrorKind::BadUse, "a card's marker is 6 to 40 mm wide");
    for (const int number : numbers)
        if (!markerPattern(kCardDictionary, number))
            throw Error(ErrorKind::BadUse, std::to_string(number) + " is no card: numbers run from 0 to 999");

    const Grid grid = gridFor(options);
    const auto all = static_cast<int>(numbers.size());
    const int sheets = (all + grid.cards() - 1) / grid.cards();
    PaperPages pages(QStringLiteral("Animal cards"));
    for (int sheet = 0; sheet < sheets; ++sheet) {
        pages.begin(options.paper, false);
        drawWords(pages.painter(), paperSize(options.paper), sheet + 1, sheets, options);
        const int first = sheet * grid.cards();
        const int here = std::min(grid.cards(), all - first);
        for (int i = 0; i < here; ++i) {
            const int number = numbers[static_cast<std::size_t>(first + i)];
            const auto name = options.names.find(number);
            drawCard(pages.painter(), grid.place(i), number,
                     name == options.names.end() ? QString() : QString::fromStdString(name->second), options.markerMm);
        }
        drawCutLines(pages.painter(), grid, here);
    }
    writeTogether({{pdf, pages.finished()}});
    return sheets;
}

}  // namespace ringrule
