// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QGraphicsObject>

#include "ringrule/midline/landmarks.h"

namespace ringrule {

/// A landmark's handle on the photo: same size at every zoom, dragged with the mouse or moved with the arrow keys.
class LandmarkItem : public QGraphicsObject {
    Q_OBJECT

public:
    LandmarkItem(LandmarkName name, bool movedByHand, bool movable);

    [[nodiscard]] LandmarkName landmark() const { return name_; }
    [[nodiscard]] QRectF boundingRect() const override;
    [[nodiscard]] QPainterPath shape() const override;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

signals:
    /// It is being dragged and is there now.
    void dragged(QPointF at);
    /// The keeper let go of it at this place of the scene.
    void dropped(QPointF at, bool byKey);

protected:
    void mousePressEvent(QGraphicsSceneMouseEvent* event) override;
    void mouseMoveEvent(QGraphicsSceneMouseEvent* event) override;
    void mouseReleaseEvent(QGraphicsSceneMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void hoverEnterEvent(QGraphicsSceneHoverEvent* event) override;
    void hoverLeaveEvent(QGraphicsSceneHoverEvent* event) override;

private:
    [[nodiscard]] bool named() const { return hovered_ || hasFocus() || dragged_; }

    LandmarkName name_;
    QString words_;
    bool movable_;
    bool hovered_ = false;
    bool dragged_ = false;
    QPointF grip_;  ///< from the item's place to where it was taken, in the scene
};

}  // namespace ringrule
