// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QGraphicsItem>
#include <QImage>
#include <filesystem>
#include <vector>

namespace ringrule {

/// A photo in halving sizes, full size first: each zoom draws from the one that is just large enough, without flicker.
struct PhotoPicture {
    std::vector<QImage> levels;
    [[nodiscard]] QSize size() const { return levels.empty() ? QSize() : levels.front().size(); }
};

/// The photo in `path`, upright by its EXIF orientation. Throws `Error(BadPhoto)`.
[[nodiscard]] PhotoPicture readPicture(const std::filesystem::path& path);

/// The photo on a scene whose units are its pixels; the centre of its first pixel is the scene's (0, 0).
class PhotoItem : public QGraphicsItem {
public:
    void setPicture(PhotoPicture picture);
    [[nodiscard]] QRectF boundingRect() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    PhotoPicture picture_;
};

}  // namespace ringrule
