// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/lens_chart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <QImage>
#include <QPainter>

#include "ringrule/error.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/sheets/drawing_application.h"

namespace ringrule {
namespace {

constexpr double kFrameShare = 0.56;  // of the chart's width for the frame
constexpr int kMostRows = 24;         // photos that are named; more would not be legible

bool isUsed(const LensPhoto& photo) {
    return photo.state == LensPhotoState::Used || photo.state == LensPhotoState::TooSimilar ||
           photo.state == LensPhotoState::Blurred;
}

bool toRetake(const LensPhoto& photo) {
    return photo.state != LensPhotoState::Used && photo.state != LensPhotoState::TooSimilar;
}

QString wordOf(const LensPhoto& photo) {
    switch (photo.state) {
        case LensPhotoState::Used:
            return {};
        case LensPhotoState::TooSimilar:
            return QStringLiteral("repeats another");
        case LensPhotoState::Blurred:
            return QStringLiteral("retake: blurred");
        case LensPhotoState::Outlier:
            return QStringLiteral("retake: does not fit");
        case LensPhotoState::BoardNotFound:
            return QStringLiteral("retake: no board");
        case LensPhotoState::OtherSize:
            return QStringLiteral("retake: other size");
        case LensPhotoState::OtherCamera:
            return QStringLiteral("other camera");
    }
    return {};
}

QFont fontOf(const QPainter& painter, double textPx) {
    QFont font = painter.font();
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(textPx))));
    return font;
}

// One, two or five times a power of ten: how much residuals are enlarged so that a usual one can be seen.
double niceFactor(double wanted) {
    const double power = std::pow(10.0, std::floor(std::log10(std::max(1.0, wanted))));
    for (const double step : {1.0, 2.0, 5.0}) {
        if (step * power >= wanted) return step * power;
    }
    return 10.0 * power;
}

double usualMissPx(const LensReport& report) {
    double squares = 0.0;
    int count = 0;
    for (const LensPhoto& photo : report.photos) {
        if (!isUsed(photo)) continue;
        for (const PixelPoint miss : photo.missesPx) squares += dot(miss, miss);
        count += static_cast<int>(photo.missesPx.size());
    }
    return count > 0 ? std::sqrt(squares / count) : 0.0;
}

// The frame's size as the camera stores it, or 4:3 without a fit.
QSizeF frameSize(const LensReport& report) {
    if (!report.fitted) return {4.0, 3.0};
    return {static_cast<double>(report.fitted->lens.imageWidthPx),
            static_cast<double>(report.fitted->lens.imageHeightPx)};
}

void paintCells(QPainter& painter, const QRectF& frame, const LensReport& report) {
    const double width = frame.width() / std::max(1, report.cellColumns);
    const double height = frame.height() / std::max(1, report.cellRows);
    for (int row = 0; row < report.cellRows; ++row) {
        for (int column = 0; column < report.cellColumns; ++column) {
            const QRectF cell(frame.x() + column * width, frame.y() + row * height, width, height);
            const bool held = report.cornersInCell[static_cast<std::size_t>(row * report.cellColumns + column)] > 0;
            painter.fillRect(cell, held ? QColor(0xE9F4F0) : QColor(Qt::white));
            painter.setPen(QPen(QColor(0xC8D0D4), 1.0));
            painter.drawRect(cell);
            if (held) continue;
            painter.setPen(QPen(QColor(colour::kVermilion), 1.0, Qt::DotLine));
            painter.drawLine(cell.topLeft(), cell.bottomRight());
            painter.drawLine(cell.topRight(), cell.bottomLeft());
        }
    }
}

void paintCorners(QPainter& painter, const QRectF& frame, const LensReport& report, double enlarged) {
    if (!report.fitted) return;
    const QSizeF size = frameSize(report);
    const double scale = frame.width() / size.width();
    painter.save();
    painter.setClipRect(frame);
    for (const LensPhoto& photo : report.photos) {
        if (photo.missesPx.size() != photo.seenPx.size()) continue;
        const QColor pen(toRetake(photo) ? colour::kVermilion : colour::kBlue);
        painter.setPen(QPen(pen, isUsed(photo) ? 1.0 : 1.4));
        for (std::size_t i = 0; i < photo.seenPx.size(); ++i) {
            const QPointF at(frame.x() + (photo.seenPx[i].x + 0.5) * scale,
                             frame.y() + (photo.seenPx[i].y + 0.5) * scale);
            const QPointF miss(photo.missesPx[i].x, photo.missesPx[i].y);
            painter.drawEllipse(at, 1.2, 1.2);
            painter.drawLine(at, at + miss * (enlarged * scale));
        }
    }
    painter.restore();
}

void paintFrame(QPainter& painter, const QRectF& area, const LensReport& report, double textPx) {
    const QSizeF size = frameSize(report);
    const double room = area.height() - 3.6 * textPx;
    const double width = std::min(area.width(), room * size.width() / size.height());
    const QRectF frame(area.x(), area.y() + 1.8 * textPx, width, width * size.height() / size.width());
    painter.setPen(QColor(Qt::black));
    painter.drawText(QPointF(frame.x(), area.y() + textPx),
                     QStringLiteral("Frame covered: %1 %").arg(100.0 * report.coverage, 0, 'f', 0));
    paintCells(painter, frame, report);
    const double usual = usualMissPx(report);
    // A usual miss is drawn as long as the text is high.
    const double enlarged =
        usual > 0.0 ? niceFactor(textPx / usual * size.width() / std::max(1.0, frame.width())) : 1.0;
    paintCorners(painter, frame, report, enlarged);
    painter.setPen(QPen(QColor(Qt::black), 1.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(frame);
    if (usual > 0.0)
        painter.drawText(QPointF(frame.x(), frame.bottom() + 1.4 * textPx),
                         QStringLiteral("Lines: corners off the fit, %1 times enlarged (RMS %2 px)")
                             .arg(enlarged, 0, 'f', 0)
                             .arg(usual, 0, 'f', 2));
}

void paintPhoto(QPainter& painter, const QRectF& row, const LensPhoto& photo, double mostPx, double textPx) {
    const double nameWidth = 0.36 * row.width(), barRoom = 0.34 * row.width();
    const QFontMetricsF metrics(painter.font());
    painter.setPen(QColor(Qt::black));
    const QString name = QString::fromStdString(photo.path.filename().string());
    painter.drawText(QRectF(row.x(), row.y(), nameWidth - 0.5 * textPx, row.height()),
                     Qt::AlignRight | Qt::AlignVCenter,
                     metrics.elidedText(name, Qt::ElideMiddle, nameWidth - 0.5 * textPx));
    const QRectF bar(row.x() + nameWidth, row.y() + 0.2 * row.height(),
                     mostPx > 0.0 ? barRoom * photo.rmsPx / mostPx : 0.0, 0.6 * row.height());
    painter.fillRect(bar, QBrush(QColor(toRetake(photo) ? colour::kVermilion : colour::kBlue),
                                 toRetake(photo) ? Qt::Dense3Pattern : Qt::SolidPattern));
    QString text = photo.rmsPx > 0.0 ? QString::number(photo.rmsPx, 'f', 2) + QStringLiteral(" px") : QString();
    const QString word = wordOf(photo);
    if (!word.isEmpty()) text += (text.isEmpty() ? QString() : QStringLiteral("  ")) + word;
    painter.drawText(QPointF(bar.right() + 0.4 * textPx, row.center().y() + 0.35 * textPx), text);
}

void paintPhotos(QPainter& painter, const QRectF& area, const LensReport& report, double textPx) {
    painter.setPen(QColor(Qt::black));
    painter.drawText(QPointF(area.x(), area.y() + textPx), QStringLiteral("Residual of each photo (RMS)"));
    const int rows = std::min(kMostRows, static_cast<int>(report.photos.size()));
    if (rows == 0) return;
    double most = 0.0;
    for (const LensPhoto& photo : report.photos) most = std::max(most, photo.rmsPx);
    const double height = std::min(1.9 * textPx, (area.height() - 3.6 * textPx) / rows);
    // When not all have room, those to be retaken come first.
    std::vector<const LensPhoto*> shown;
    for (const LensPhoto& photo : report.photos) shown.push_back(&photo);
    if (std::ssize(shown) > rows)
        std::stable_partition(shown.begin(), shown.end(), [](const LensPhoto* photo) { return toRetake(*photo); });
    for (int i = 0; i < rows; ++i)
        paintPhoto(painter, {area.x(), area.y() + 1.8 * textPx + i * height, area.width(), height},
                   *shown[static_cast<std::size_t>(i)], most, textPx);
    if (std::ssize(shown) > rows)
        painter.drawText(QPointF(area.x(), area.y() + 3.0 * textPx + rows * height),
                         QStringLiteral("… and %1 more").arg(std::ssize(shown) - rows));
}

}  // namespace

void paintLensChart(QPainter& painter, const QRectF& area, const LensReport& report, double textPx) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(fontOf(painter, textPx));
    painter.fillRect(area, QColor(Qt::white));
    const QRectF inner = area.adjusted(textPx, textPx, -textPx, -textPx);
    const double left = kFrameShare * inner.width();
    paintFrame(painter, {inner.x(), inner.y(), left - 1.5 * textPx, inner.height()}, report, textPx);
    paintPhotos(painter, {inner.x() + left, inner.y(), inner.width() - left, inner.height()}, report, textPx);
    painter.restore();
}

void writeLensChartPng(const LensReport& report, const std::filesystem::path& png) {
    ensureDrawingApplication();
    constexpr int kWidthPx = 1800, kHeightPx = 900;
    QImage image(kWidthPx, kHeightPx, QImage::Format_RGB32);
    QPainter painter(&image);
    paintLensChart(painter, QRectF(0, 0, kWidthPx, kHeightPx), report, 24.0);
    painter.end();
    if (!image.save(QString::fromStdString(png.string()), "PNG"))
        throw Error(ErrorKind::NoSpace, "the chart cannot be written; check the folder and the free space",
                    png.string());
}

}  // namespace ringrule
