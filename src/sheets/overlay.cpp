// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/overlay.h"

#include <QPainter>

#include "ringrule/error.h"
#include "ringrule/sheets/drawing_application.h"
#include "sheets/overlay_picture.h"
#include "sheets/overlay_table.h"

namespace ringrule {
namespace {

constexpr int kWidthPx = 1600;
constexpr double kTallestPx = 1500.0;

}  // namespace

void writeOverlayPng(const std::filesystem::path& photo, std::span<const OverlayAnimal> animals,
                     const std::filesystem::path& png) {
    ensureDrawingApplication();
    const QImage picture = overlayPicture(photo, animals, {kWidthPx, kTallestPx});
    const double tableHeight = overlayTableHeight(animals, kWidthPx);
    QImage sheet(kWidthPx, picture.height() + static_cast<int>(tableHeight), QImage::Format_RGB32);
    sheet.fill(QColor(0xFFFFFF));
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(0, 0, kWidthPx, picture.height(), QColor(0x20272B));
    painter.drawImage((kWidthPx - picture.width()) / 2, 0, picture);
    paintOverlayTable(painter, QRectF(0, picture.height(), kWidthPx, tableHeight), animals);
    painter.end();
    if (!sheet.save(QString::fromStdString(png.string()), "PNG"))
        throw Error(ErrorKind::NoSpace, "the overlay cannot be written; check the folder and the free space",
                    png.string());
}

}  // namespace ringrule
