// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/animal_sheet.h"

#include <QFile>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>
#include <numeric>

#include "ringrule/error.h"
#include "ringrule/sheets/drawing_application.h"
#include "ringrule/sheets/number_text.h"
#include "sheets/overlay_picture.h"

namespace ringrule {
namespace {

constexpr int kResolution = 600;
constexpr double kPointsPerInch = 72.0;
constexpr double kTextPt = 9.0;
constexpr std::size_t kMostSessions = 9;
constexpr std::size_t kMostFindings = 3;
constexpr QSizeF kPhotoPx{1400.0, 520.0};

const QColor kText(0x1F2A30);
const QColor kQuiet(0x5B6870);
const QColor kRule(0xC9D1D5);

QString textOf(const std::string& text) {
    return QString::fromStdString(text);
}

/// One page being filled from top to bottom; units are points.
class Page {
public:
    Page(QPainter& painter, const QRectF& area)
        : p_(painter), left_(area.left()), width_(area.width()), y_(area.top()), bottom_(area.bottom()) {}

    void words(const QString& text, double sizePt, bool bold = false, const QColor& ink = kText) {
        setFont(sizePt, bold);
        p_.setPen(ink);
        const QRectF room(left_, y_, width_, 400.0);
        QRectF used;
        p_.drawText(room, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text, &used);
        y_ += used.height() + 0.25 * sizePt;
    }

    void gap(double points) { y_ += points; }

    void picture(const QImage& image, double tallest) {
        const QSizeF size = QSizeF(image.size()).scaled(width_, tallest, Qt::KeepAspectRatio);
        p_.drawImage(QRectF(QPointF(left_, y_), size), image);
        y_ += size.height() + 8.0;
    }

    void charts(const Chart& a, const Chart& b, double height) {
        setFont(8.0, false);
        const double half = 0.5 * (width_ - 10.0);
        const PaintChartOptions options{.textPx = 8.0, .dark = false, .ground = false};
        paintChart(p_, QRectF(left_ - 6.0, y_, half + 6.0, height), a, options);
        paintChart(p_, QRectF(left_ + half + 4.0, y_, half + 6.0, height), b, options);
        y_ += height + 6.0;
    }

    /// One line of a table; a column's width goes with its share.
    void tableLine(const QStringList& cells, const std::vector<double>& shares, const QColor& ink) {
        setFont(8.0, false);
        const double unit = width_ / std::accumulate(shares.begin(), shares.end(), 0.0);
        double left = left_;
        p_.setPen(ink);
        for (qsizetype k = 0; k < cells.size(); ++k) {
            const double column = unit * shares[static_cast<std::size_t>(k)];
            const auto side = static_cast<int>((k == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
            p_.drawText(QRectF(left, y_, column, 13.0), side, cells[k]);
            left += column;
        }
        y_ += 13.0;
        p_.setPen(QPen(kRule, 0.4));
        p_.drawLine(QPointF(left_, y_), QPointF(left_ + width_, y_));
        y_ += 1.0;
    }

    void footer(const QString& text) {
        setFont(7.5, false);
        p_.setPen(kQuiet);
        p_.drawText(QRectF(left_, bottom_ - 30.0, width_, 30.0), Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap,
                    text);
    }

private:
    void setFont(double sizePt, bool bold) {
        QFont font = p_.font();
        // The painter counts in points, so that a point is a pixel to it.
        font.setPixelSize(std::max(1, qRound(sizePt)));
        font.setWeight(bold ? QFont::DemiBold : QFont::Normal);
        p_.setFont(font);
    }

    QPainter& p_;
    double left_;
    double width_;
    double y_;
    double bottom_;
};

QString factsOf(const AnimalSheet& sheet) {
    const Animal& animal = sheet.history.animal;
    QStringList facts{textOf(animal.species)};
    if (animal.sex != Sex::Unknown) facts << (animal.sex == Sex::Female ? "female" : "male");
    if (animal.hatchedOn)
        facts << QString(animal.hatchedExactly ? "hatched %1" : "hatched about %1")
                     .arg(textOf(formatDate(*animal.hatchedOn)));
    if (!sheet.tank.empty()) facts << "tank " + textOf(sheet.tank);
    if (!sheet.diet.empty()) facts << "fed " + textOf(sheet.diet);
    if (animal.card) facts << QString("card %1").arg(*animal.card);
    return facts.join("  ·  ");
}

void writeFindings(Page& page, const AnimalSheet& sheet) {
    if (sheet.findings.empty()) {
        page.words(QString("Nothing calls for a look after the session of %1.").arg(textOf(formatDate(sheet.asOf))),
                   10.0, true);
        return;
    }
    for (std::size_t k = 0; k < std::min(kMostFindings, sheet.findings.size()); ++k) {
        const Finding& finding = sheet.findings[k];
        page.words(textOf(finding.sentence), 10.0, true);
        if (!finding.nextStep.empty()) page.words("Next: " + textOf(finding.nextStep), kTextPt);
        QStringList reasons;
        for (const std::string& reason : finding.otherReasons) reasons << textOf(reason);
        if (!reasons.isEmpty()) page.words("What else could explain it: " + reasons.join(" "), kTextPt, false, kQuiet);
        page.gap(4.0);
    }
}

void writeSessions(Page& page, const AnimalSheet& sheet) {
    const std::vector<double> shares{55, 48, 72, 74, 92, 92, 76};
    page.tableLine({"Session", "Age, days", "Length, mm", "Depth, mm", "Depth ratio", "Girth ratio", "Belly hollow, %"},
                   shares, kQuiet);
    const auto number = [](const Estimate& estimate) {
        return estimate.known() ? textOf(numberWithInterval(estimate)) : QString("–");
    };
    std::vector<Observation> seen = sheet.history.observations;
    std::erase_if(seen, [&](const Observation& o) { return o.on > sheet.asOf; });
    std::reverse(seen.begin(), seen.end());
    const std::size_t written = std::min(kMostSessions, seen.size());
    for (std::size_t k = 0; k < written; ++k) {
        const Observation& o = seen[k];
        page.tableLine({textOf(formatDate(o.on)), o.ageDays ? QString::number(qRound(*o.ageDays)) : "–",
                        number(o.standardLengthMm), number(o.trunkDepthMm), number(o.depthRatio), number(o.girthRatio),
                        number(o.bellyHollowPercent)},
                       shares, kText);
    }
    if (written < seen.size())
        page.words(QString("The newest %1 of %2 sessions.").arg(written).arg(seen.size()), 8.0, false, kQuiet);
}

void writeCharts(Page& page, const AnimalSheet& sheet) {
    std::vector<GrowthLine> lines = sheet.lines;
    for (GrowthLine& line : lines)
        std::erase_if(line.points, [&](const Observation& seen) { return seen.on > sheet.asOf; });
    Chart length = growthChart(lines, ChartMeasure::StandardLength);
    Chart ratio = growthChart(lines, ChartMeasure::DepthRatio);
    length.note.clear();
    ratio.note.clear();
    page.charts(length, ratio, 190.0);
}

}  // namespace

void writeAnimalSheetPdf(const AnimalSheet& sheet, const std::filesystem::path& pdf) {
    ensureDrawingApplication();
    const QImage photo =
        sheet.photo.empty() || !sheet.drawn ? QImage() : overlayPicture(sheet.photo, {&*sheet.drawn, 1}, kPhotoPx);
    QFile file(textOf(pdf.string()));
    if (!file.open(QIODevice::WriteOnly))
        throw Error(ErrorKind::NoSpace, "the sheet cannot be written; check the folder and the free space",
                    pdf.string());
    QPdfWriter writer(&file);
    writer.setResolution(kResolution);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF(16, 14, 16, 12), QPageLayout::Millimeter);
    writer.setTitle("Ringrule: " + textOf(sheet.history.animal.code));
    QPainter painter(&writer);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kResolution / kPointsPerInch, kResolution / kPointsPerInch);
    const QRectF area(QPointF(0, 0), writer.pageLayout().paintRect(QPageLayout::Point).size());
    Page page(painter, area);
    const Animal& animal = sheet.history.animal;
    page.words(textOf(animal.name.empty() ? animal.code : animal.code + ", " + animal.name), 20.0, true);
    page.words(factsOf(sheet), kTextPt + 1.0, false, kQuiet);
    page.words(QString("As told after the session of %1").arg(textOf(formatDate(sheet.asOf))), kTextPt, false, kQuiet);
    page.gap(8.0);
    if (!photo.isNull()) page.picture(photo, 150.0);
    writeFindings(page, sheet);
    page.gap(6.0);
    writeCharts(page, sheet);
    writeSessions(page, sheet);
    page.footer(
        "± is the half-width of the 95 % interval. Measures, not diagnoses: a thin, listless or refusing animal goes "
        "to the "
        "veterinarian whatever its numbers say. There is no published limit for thinness in these animals: the "
        "reference is the "
        "animal's own past and its like. Written by Ringrule.");
    painter.end();
    file.close();
    if (file.error() != QFileDevice::NoError)
        throw Error(ErrorKind::NoSpace, "the sheet cannot be written; check the free space", pdf.string());
}

}  // namespace ringrule
