// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFutureWatcher>
#include <QImage>
#include <QWidget>
#include <vector>

#include "app/animal_photos.h"

namespace ringrule {

/// An animal's photos of several sessions, all at one scale: long animals one below the other, upright ones side by
/// side. Photos are read off the window's thread and appear one after the other. A click chooses one.
class PhotoStrip : public QWidget {
    Q_OBJECT

public:
    explicit PhotoStrip(QWidget* parent = nullptr);
    ~PhotoStrip() override;

    void setPhotos(std::vector<AnimalPhoto> photos);
    [[nodiscard]] const std::vector<AnimalPhoto>& photos() const { return photos_; }
    /// Whether photos are still being read.
    [[nodiscard]] bool busy() const { return reading_.isRunning(); }
    /// Where a photo is drawn, in the widget's units; all have the same units a millimetre.
    [[nodiscard]] QRectF placeOf(std::size_t index) const;
    [[nodiscard]] double unitsPerMm() const;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

signals:
    void photoChosen(const ringrule::AnimalPhoto& photo);
    void allRead();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    /// What is cut out of a photo: the animal with some room about it.
    struct Cut {
        QRectF px;  ///< of the photo
        QSizeF mm;
    };
    struct Layout {
        bool stacked = true;  ///< one below the other
        double unitsPerMm = 1.0;
        std::vector<QRectF> places;
        double height = 0.0;
    };
    [[nodiscard]] Layout layoutFor(double width) const;
    [[nodiscard]] double captionWidth() const;
    void paintScaleBar(QPainter& painter, const Layout& layout) const;

    std::vector<AnimalPhoto> photos_;
    std::vector<Cut> cuts_;
    std::vector<QImage> pictures_;
    QFutureWatcher<QImage> reading_;
};

}  // namespace ringrule
