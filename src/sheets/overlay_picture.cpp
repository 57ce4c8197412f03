// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/overlay_picture.h"

#include <QImageReader>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "ringrule/error.h"
#include "ringrule/sheets/animal_paths.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {
namespace {

constexpr double kLargestZoom = 4.0;
constexpr double kMarkRadiusPx = 11.0;
constexpr int kTextPx = 18;

QImage readUpright(const std::filesystem::path& photo) {
    QImageReader reader(QString::fromStdString(photo.string()));
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    QImageReader::setAllocationLimit(1024);
    QImage image = reader.read();
    if (image.isNull())
        throw Error(ErrorKind::BadPhoto, "the photo cannot be read: " + reader.errorString().toStdString(),
                    photo.string());
    return image.convertToFormat(QImage::Format_RGB32);
}

/// The part of the photo worth showing: its animals with room about them, or all of it.
QRectF cutFor(std::span<const OverlayAnimal> animals, const QSize& size) {
    const QRectF whole(QPointF(0, 0), QSizeF(size));
    QRectF about;
    for (const OverlayAnimal& animal : animals) about |= outlinePath(animal.outline).boundingRect();
    if (about.isEmpty()) return whole;
    const double room = 0.08 * std::max(about.width(), about.height()) + 20.0;
    about.adjust(-room, -room, room, room);
    // A long, thin animal keeps some of its surroundings: at least a quarter as tall as wide.
    const double shortest = 0.26 * about.width() - about.height();
    if (shortest > 0) about.adjust(0, -0.5 * shortest, 0, 0.5 * shortest);
    return about.intersected(whole).toAlignedRect();
}

void strokeTwice(QPainter& painter, const QPainterPath& path, QColor ink, double width) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(QColor(0, 0, 0, 120), width + 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(ink, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
}

void drawTextTag(QPainter& painter, const QPointF& at, const QString& text) {
    const QFontMetricsF metrics(painter.font());
    const double height = metrics.height();
    const QRectF tag(at.x(), at.y() - 0.5 * height, metrics.horizontalAdvance(text) + 10.0, height + 2.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(20, 26, 30, 185));
    painter.drawRoundedRect(tag, 4, 4);
    painter.setPen(Qt::white);
    painter.drawText(tag, Qt::AlignCenter, text);
}

void drawLandmarks(QPainter& painter, const Landmarks& landmarks, const QTransform& toPicture, bool named) {
    bool above = true;
    for (const LandmarkName name : kLandmarkNames) {
        const std::optional<Landmark>& landmark = landmarkOf(landmarks, name);
        if (!landmark) continue;
        const QPointF at = toPicture.map(QPointF(landmark->atPx.x, landmark->atPx.y));
        paintLandmarkMark(painter, name, at, kMarkRadiusPx);
        if (!named) continue;
        QString words = QString::fromUtf8(landmarkWords(name).data());
        if (landmark->movedByHand) words += " (by hand)";
        drawTextTag(painter, at + QPointF(kMarkRadiusPx * 0.6, (above ? -2.6 : 2.6) * kMarkRadiusPx), words);
        above = !above;
    }
}

void drawAnimal(QPainter& painter, const OverlayAnimal& animal, const QTransform& toPicture, bool several) {
    strokeTwice(painter, toPicture.map(halfWidthTicks(animal.anatomy.midline)), QColor(255, 255, 255, 150), 1.0);
    strokeTwice(painter, toPicture.map(outlinePath(animal.outline)), QColor(colour::kSkyBlue), 2.0);
    strokeTwice(painter, toPicture.map(spinePath(animal.anatomy.midline)), QColor(colour::kYellow), 2.0);
    drawLandmarks(painter, animal.anatomy.landmarks, toPicture, !several);
    if (several && !animal.label.empty()) {
        const QRectF box = toPicture.map(outlinePath(animal.outline)).boundingRect();
        drawTextTag(painter, box.topLeft() - QPointF(0, 8), QString::fromStdString(animal.label));
    }
}

}  // namespace

QImage overlayPicture(const std::filesystem::path& photo, std::span<const OverlayAnimal> animals, QSizeF largest) {
    const QImage image = readUpright(photo);
    const QRectF cut = cutFor(animals, image.size());
    const double zoom = std::min({largest.width() / cut.width(), largest.height() / cut.height(), kLargestZoom});
    // Qt's filter looks at four pixels only, so that a strong reduction would flicker: this one averages.
    QImage picture =
        image.copy(cut.toRect()).scaled((zoom * cut.size()).toSize(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    QFont font = painter.font();
    font.setPixelSize(kTextPx);
    painter.setFont(font);
    // The centre of the first pixel is (0, 0), its corner (-0.5, -0.5).
    QTransform toPicture;
    toPicture.scale(picture.width() / cut.width(), picture.height() / cut.height())
        .translate(0.5 - cut.left(), 0.5 - cut.top());
    for (const OverlayAnimal& animal : animals) drawAnimal(painter, animal, toPicture, animals.size() > 1);
    return picture;
}

}  // namespace ringrule
