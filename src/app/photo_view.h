// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QGraphicsView>
#include <optional>
#include <vector>

#include "app/photo_picture.h"
#include "ringrule/midline/landmarks.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

class LandmarkItem;
class PhotoTool;

/// An animal as the photo view draws it.
struct ShownAnimal {
    QString label;
    Outline outline;
    Midline midline;
    Landmarks landmarks;
    bool movable = false;  ///< whether its landmarks can be dragged
};

/// A photo with its animals over it: zoomed by wheel or keys, moved by dragging, landmarks dragged or moved by arrow
/// keys. Scene coordinates are the photo's pixels.
class PhotoView : public QGraphicsView {
    Q_OBJECT

public:
    explicit PhotoView(QWidget* parent = nullptr);

    void showPhoto(PhotoPicture picture);
    void showAnimals(std::vector<ShownAnimal> animals, std::size_t selected);
    /// An empty view with one sentence in its middle.
    void showSentence(const QString& sentence);
    /// Pointer and keys go to this tool; null: they move marks and the photo. The tool outlives the view's use of it.
    void setTool(PhotoTool* tool);

    [[nodiscard]] LandmarkItem* landmarkItem(LandmarkName name) const;

public slots:
    /// The selected animal, or the whole photo, as large as the view allows.
    void fit();
    void zoomIn() { zoomBy(1.3); }
    void zoomOut() { zoomBy(1.0 / 1.3); }

signals:
    /// A landmark is being dragged and is there now.
    void landmarkDragged(ringrule::LandmarkName name, QPointF atPx);
    void landmarkDropped(ringrule::LandmarkName name, QPointF atPx, bool byKey);
    void animalClicked(std::size_t index);

protected:
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;

private:
    void zoomBy(double factor);
    void addAnimal(const ShownAnimal& animal, bool selected);
    void addPath(const QPainterPath& path, const QColor& ink, double width);
    void addLandmarks(const ShownAnimal& animal);
    [[nodiscard]] double photoPxPerViewPx() const { return 1.0 / transform().m11(); }
    /// A key for the tool: arrows move its cross, Space presses there. Whether it was one.
    bool toolKey(const QKeyEvent& event);
    void moveCross(QPointF byViewPx);
    void pressCross();

    PhotoItem* photo_ = nullptr;
    std::vector<ShownAnimal> animals_;
    std::size_t selected_ = 0;
    std::vector<QGraphicsItem*> overlay_;
    std::vector<LandmarkItem*> landmarks_;
    QString sentence_;
    bool fitted_ = true;
    PhotoTool* tool_ = nullptr;
    std::optional<QPointF> cross_;  ///< where the keyboard stands on the photo
    QPointF panFrom_;
};

}  // namespace ringrule
