// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/overlay_table.h"

#include <QPainter>
#include <QStringList>

#include "ringrule/sheets/number_text.h"

namespace ringrule {
namespace {

constexpr double kMargin = 36.0;
constexpr double kCell = 64.0;
constexpr double kLine = 32.0;
constexpr int kColumns = 5;
constexpr std::size_t kMainRows = 3;

const QColor kText(0x1F2A30);
const QColor kQuiet(0x5B6870);

QFont sized(const QPainter& painter, int pixels, bool bold = false) {
    QFont font = painter.font();
    font.setPixelSize(pixels);
    font.setWeight(bold ? QFont::DemiBold : QFont::Normal);
    return font;
}

std::vector<MeasureRow> mainRows(const Measurement& measurement) {
    std::vector<MeasureRow> rows;
    for (const MeasureRow& row : measureRows(measurement))
        if (row.name == "Standard length" || row.name == "Trunk depth" || row.name == "Depth ratio" ||
            row.name == "Trunk width")
            rows.push_back(row);
    if (rows.size() > kMainRows) rows.resize(kMainRows);
    return rows;
}

QStringList sentencesOf(const OverlayAnimal& animal) {
    QStringList sentences;
    if (animal.measurement.refusal) sentences << QString::fromStdString(animal.measurement.refusal->sentence);
    for (const Remark remark : animal.measurement.remarks) {
        const std::string_view sentence = remarkSentence(remark);
        sentences << QString::fromUtf8(sentence.data(), static_cast<qsizetype>(sentence.size()));
    }
    sentences.removeDuplicates();
    return sentences;
}

void drawCell(QPainter& painter, const QRectF& cell, const MeasureRow& row) {
    painter.setFont(sized(painter, 18));
    painter.setPen(kQuiet);
    painter.drawText(cell, Qt::AlignLeft | Qt::AlignTop, QString::fromStdString(row.name));
    painter.setFont(sized(painter, 23, row.value.known()));
    painter.setPen(row.value.known() ? kText : kQuiet);
    painter.drawText(cell.adjusted(0, 25, 0, 0), Qt::AlignLeft | Qt::AlignTop,
                     QString::fromStdString(numberWithInterval(row.value, row.unit)));
}

void paintOne(QPainter& painter, const QRectF& area, const OverlayAnimal& animal) {
    double top = area.top() + kMargin;
    const double column = (area.width() - 2 * kMargin) / kColumns;
    const std::vector<MeasureRow> rows = measureRows(animal.measurement);
    if (!animal.label.empty()) {
        painter.setFont(sized(painter, 26, true));
        painter.setPen(kText);
        painter.drawText(QRectF(kMargin, top - 12, area.width(), 40), Qt::AlignLeft | Qt::AlignVCenter,
                         QString::fromStdString(animal.label));
        top += 44.0;
    }
    for (std::size_t k = 0; k < rows.size(); ++k) {
        const std::size_t row = k / kColumns;
        const std::size_t place = k % kColumns;
        drawCell(painter,
                 QRectF(kMargin + static_cast<double>(place) * column, top + static_cast<double>(row) * kCell, column,
                        kCell),
                 rows[k]);
    }
    const std::size_t tableRows = (rows.size() + kColumns - 1) / kColumns;
    top += kCell * static_cast<double>(tableRows) + 6.0;
    painter.setFont(sized(painter, 18));
    painter.setPen(kQuiet);
    for (const QString& sentence : sentencesOf(animal)) {
        painter.drawText(QRectF(kMargin, top, area.width() - 2 * kMargin, kLine), Qt::AlignLeft | Qt::AlignVCenter,
                         "•  " + sentence);
        top += kLine;
    }
}

void paintSeveral(QPainter& painter, const QRectF& area, std::span<const OverlayAnimal> animals) {
    double top = area.top() + 0.6 * kMargin;
    const double column = (area.width() - 2 * kMargin) / 4.0;
    for (const OverlayAnimal& animal : animals) {
        painter.setFont(sized(painter, 19, true));
        painter.setPen(kText);
        painter.drawText(QRectF(kMargin, top, column, kLine), Qt::AlignLeft | Qt::AlignVCenter,
                         QString::fromStdString(animal.label));
        painter.setFont(sized(painter, 19));
        double left = kMargin + 0.6 * column;
        for (const MeasureRow& row : mainRows(animal.measurement)) {
            painter.setPen(row.value.known() ? kText : kQuiet);
            const QString words = QString::fromStdString(row.name).toLower() + "  " +
                                  QString::fromStdString(numberWithInterval(row.value, row.unit));
            painter.drawText(QRectF(left, top, 1.1 * column, kLine), Qt::AlignLeft | Qt::AlignVCenter, words);
            left += 1.13 * column;
        }
        top += kLine;
    }
}

}  // namespace

double overlayTableHeight(std::span<const OverlayAnimal> animals, double /*width*/) {
    if (animals.empty()) return 0.0;
    if (animals.size() > 1) return 1.2 * kMargin + kLine * static_cast<double>(animals.size());
    const std::size_t rows = (measureRows(animals[0].measurement).size() + kColumns - 1) / kColumns;
    const double heading = animals[0].label.empty() ? 0.0 : 44.0;
    return 1.6 * kMargin + heading + kCell * static_cast<double>(rows) +
           kLine * static_cast<double>(sentencesOf(animals[0]).size());
}

void paintOverlayTable(QPainter& painter, const QRectF& area, std::span<const OverlayAnimal> animals) {
    if (animals.empty()) return;
    if (animals.size() == 1)
        paintOne(painter, area, animals[0]);
    else
        paintSeveral(painter, area, animals);
}

}  // namespace ringrule
