// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/landmark_item.h"

#include <QCursor>
#include <QGraphicsSceneMouseEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include "app/core_text.h"
#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {
namespace {
constexpr double kRadius = 8.0;
constexpr double kGripRadius = 14.0;
constexpr int kSmallestDrag = 3;
constexpr double kStepPx = 1.0;
constexpr double kLongStepPx = 10.0;
}  // namespace

LandmarkItem::LandmarkItem(LandmarkName name, bool movedByHand, bool movable) : name_(name), movable_(movable) {
    words_ = coreText(landmarkWords(name));
    if (movedByHand) words_ += tr(", by hand");
    setFlag(ItemIgnoresTransformations);
    setFlag(ItemIsFocusable, movable);
    setAcceptHoverEvents(true);
    setAcceptedMouseButtons(movable ? Qt::LeftButton : Qt::NoButton);
    setCursor(movable ? Qt::OpenHandCursor : Qt::ArrowCursor);
    setZValue(10);
}

QRectF LandmarkItem::boundingRect() const {
    return {-kGripRadius, -3.2 * kGripRadius, 220.0, 4.4 * kGripRadius};
}

QPainterPath LandmarkItem::shape() const {
    QPainterPath path;
    path.addEllipse(QPointF(0, 0), kGripRadius, kGripRadius);
    return path;
}

void LandmarkItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    painter->setRenderHint(QPainter::Antialiasing);
    if (hasFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(QColor(0, 0, 0, 160), 4.0));
        painter->drawEllipse(QPointF(0, 0), kGripRadius - 1.5, kGripRadius - 1.5);
        painter->setPen(QPen(Qt::white, 1.8));
        painter->drawEllipse(QPointF(0, 0), kGripRadius - 1.5, kGripRadius - 1.5);
    }
    paintLandmarkMark(*painter, name_, QPointF(0, 0), dragged_ ? 0.75 * kRadius : kRadius);
    if (!named()) return;
    const QFontMetricsF metrics(painter->font());
    const QRectF tag(6.0, -2.9 * kGripRadius, metrics.horizontalAdvance(words_) + 14.0, metrics.height() + 5.0);
    painter->setPen(Qt::NoPen);
    painter->setBrush(QColor(20, 26, 30, 215));
    painter->drawRoundedRect(tag, 4, 4);
    painter->setPen(Qt::white);
    painter->drawText(tag, Qt::AlignCenter, words_);
}

void LandmarkItem::mousePressEvent(QGraphicsSceneMouseEvent* event) {
    setFocus(Qt::MouseFocusReason);
    grip_ = event->scenePos() - pos();
    event->accept();
}

void LandmarkItem::mouseMoveEvent(QGraphicsSceneMouseEvent* event) {
    // A hand that only presses trembles a little.
    const QPoint moved = event->screenPos() - event->buttonDownScreenPos(Qt::LeftButton);
    if (!dragged_ && moved.manhattanLength() < kSmallestDrag) return;
    dragged_ = true;
    setCursor(Qt::ClosedHandCursor);
    setPos(event->scenePos() - grip_);
    emit dragged(pos());
}

void LandmarkItem::mouseReleaseEvent(QGraphicsSceneMouseEvent* event) {
    if (!dragged_) return;
    dragged_ = false;
    setCursor(Qt::OpenHandCursor);
    emit dropped(event->scenePos() - grip_, false);
}

void LandmarkItem::keyPressEvent(QKeyEvent* event) {
    const double step = event->modifiers().testFlag(Qt::ShiftModifier) ? kLongStepPx : kStepPx;
    switch (event->key()) {
        case Qt::Key_Left:
            emit dropped(pos() + QPointF(-step, 0), true);
            return;
        case Qt::Key_Right:
            emit dropped(pos() + QPointF(step, 0), true);
            return;
        case Qt::Key_Up:
            emit dropped(pos() + QPointF(0, -step), true);
            return;
        case Qt::Key_Down:
            emit dropped(pos() + QPointF(0, step), true);
            return;
        default:
            event->ignore();
    }
}

void LandmarkItem::hoverEnterEvent(QGraphicsSceneHoverEvent*) {
    hovered_ = true;
    update();
}

void LandmarkItem::hoverLeaveEvent(QGraphicsSceneHoverEvent*) {
    hovered_ = false;
    update();
}

}  // namespace ringrule
