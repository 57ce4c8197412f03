// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_picture.h"

#include <QImageReader>
#include <QPainter>
#include <QStyleOptionGraphicsItem>
#include <algorithm>
#include <cmath>

#include "ringrule/error.h"

namespace ringrule {
namespace {
constexpr int kSmallestSidePx = 400;
}

PhotoPicture readPicture(const std::filesystem::path& path) {
    QImageReader reader(QString::fromStdString(path.string()));
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    QImage full = reader.read();
    if (full.isNull())
        throw Error(ErrorKind::BadPhoto, "the photo cannot be shown: " + reader.errorString().toStdString(),
                    path.string());
    PhotoPicture picture;
    picture.levels.push_back(full.convertToFormat(QImage::Format_RGB32));
    while (std::min(picture.levels.back().width(), picture.levels.back().height()) > 2 * kSmallestSidePx) {
        const QImage& last = picture.levels.back();
        picture.levels.push_back(
            last.scaled(last.width() / 2, last.height() / 2, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
    }
    return picture;
}

void PhotoItem::setPicture(PhotoPicture picture) {
    prepareGeometryChange();
    picture_ = std::move(picture);
    update();
}

QRectF PhotoItem::boundingRect() const {
    return {QPointF(-0.5, -0.5), QSizeF(picture_.size())};
}

void PhotoItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    if (picture_.levels.empty()) return;
    const double zoom = std::hypot(painter->deviceTransform().m11(), painter->deviceTransform().m12());
    std::size_t level = 0;
    while (level + 1 < picture_.levels.size() && zoom * std::pow(2.0, static_cast<double>(level + 1)) <= 1.0) ++level;
    // Far in, pixels are shown as they are: a keeper places a mark by them.
    painter->setRenderHint(QPainter::SmoothPixmapTransform, zoom < 4.0);
    painter->drawImage(boundingRect(), picture_.levels[level]);
}

}  // namespace ringrule
