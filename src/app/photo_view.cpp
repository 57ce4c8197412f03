// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_view.h"

#include <QGraphicsPathItem>
#include <QKeyEvent>
#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/landmark_item.h"
#include "app/photo_tool.h"
#include "ringrule/sheets/animal_paths.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/sheets/landmark_mark.h"

namespace ringrule {
namespace {
constexpr double kLargestZoom = 40.0;
constexpr double kSmallestZoom = 0.02;

void drawCross(QPainter& painter, QPointF at, double photoPxPerViewPx) {
    const double arm = 11.0 * photoPxPerViewPx;
    for (const auto& [ink, width] : {std::pair(QColor(0, 0, 0, 170), 4.0), std::pair(QColor(Qt::white), 1.6)}) {
        painter.setPen(QPen(ink, width * photoPxPerViewPx));
        painter.drawLine(at - QPointF(arm, 0), at + QPointF(arm, 0));
        painter.drawLine(at - QPointF(0, arm), at + QPointF(0, arm));
    }
}

}  // namespace

PhotoView::PhotoView(QWidget* parent) : QGraphicsView(parent) {
    setScene(new QGraphicsScene(this));
    photo_ = new PhotoItem;
    scene()->addItem(photo_);
    setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
    setDragMode(ScrollHandDrag);
    setTransformationAnchor(AnchorUnderMouse);
    setResizeAnchor(AnchorViewCenter);
    setViewportUpdateMode(FullViewportUpdate);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setBackgroundBrush(QColor(0x20, 0x27, 0x2B));
    setFocusPolicy(Qt::StrongFocus);
}

void PhotoView::showPhoto(PhotoPicture picture) {
    sentence_.clear();
    showAnimals({}, 0);
    photo_->setPicture(std::move(picture));
    // Room about the photo lets its edge be brought to the middle.
    const QRectF photo = photo_->boundingRect();
    setSceneRect(photo.adjusted(-photo.width(), -photo.height(), photo.width(), photo.height()));
    fit();
}

void PhotoView::showSentence(const QString& sentence) {
    showAnimals({}, 0);
    photo_->setPicture({});
    sentence_ = sentence;
    viewport()->update();
}

void PhotoView::showAnimals(std::vector<ShownAnimal> animals, std::size_t selected) {
    std::optional<LandmarkName> focused;
    for (const LandmarkItem* item : landmarks_)
        if (item->hasFocus()) focused = item->landmark();
    for (QGraphicsItem* item : overlay_) delete item;
    overlay_.clear();
    for (LandmarkItem* item : landmarks_) {
        // It may be the one whose event led here.
        scene()->removeItem(item);
        item->deleteLater();
    }
    landmarks_.clear();
    animals_ = std::move(animals);
    selected_ = selected;
    for (std::size_t k = 0; k < animals_.size(); ++k) addAnimal(animals_[k], k == selected_);
    if (selected_ < animals_.size()) addLandmarks(animals_[selected_]);
    if (focused)
        if (LandmarkItem* item = landmarkItem(*focused)) item->setFocus();
}

void PhotoView::addPath(const QPainterPath& path, const QColor& ink, double width) {
    // A cosmetic pen counts in the screen's own pixels.
    const double screen = devicePixelRatioF();
    for (const bool halo : {true, false}) {
        QPen pen(halo ? QColor(0, 0, 0, 110) : ink, screen * (halo ? width + 1.4 : width), Qt::SolidLine, Qt::RoundCap,
                 Qt::RoundJoin);
        pen.setCosmetic(true);
        QGraphicsPathItem* item = scene()->addPath(path, pen);
        item->setAcceptedMouseButtons(Qt::NoButton);
        overlay_.push_back(item);
    }
}

void PhotoView::addAnimal(const ShownAnimal& animal, bool selected) {
    if (!animal.midline.leftHalfWidthPx.empty() && selected)
        addPath(halfWidthTicks(animal.midline, 40), QColor(255, 255, 255, 140), 0.9);
    QColor outline(colour::kSkyBlue);
    QColor spine(colour::kYellow);
    if (!selected) {
        outline.setAlpha(150);
        spine.setAlpha(110);
    }
    if (!animal.outline.boundaryPx.empty()) addPath(outlinePath(animal.outline), outline, selected ? 1.8 : 1.2);
    if (!animal.midline.spinePx.empty()) addPath(spinePath(animal.midline), spine, selected ? 1.6 : 1.0);
    if (animals_.size() < 2 || animal.outline.boundaryPx.empty()) return;
    QGraphicsSimpleTextItem* label = scene()->addSimpleText(animal.label);
    label->setBrush(Qt::white);
    label->setFlag(QGraphicsItem::ItemIgnoresTransformations);
    label->setAcceptedMouseButtons(Qt::NoButton);
    label->setPos(outlinePath(animal.outline).boundingRect().topLeft());
    overlay_.push_back(label);
}

void PhotoView::addLandmarks(const ShownAnimal& animal) {
    for (const LandmarkName name : kLandmarkNames) {
        const std::optional<Landmark>& landmark = landmarkOf(animal.landmarks, name);
        if (!landmark) continue;
        auto* item = new LandmarkItem(name, landmark->movedByHand, animal.movable);
        item->setPos(landmark->atPx.x, landmark->atPx.y);
        scene()->addItem(item);
        connect(item, &LandmarkItem::dragged, this, [this, name](QPointF at) { emit landmarkDragged(name, at); });
        connect(item, &LandmarkItem::dropped, this,
                [this, name](QPointF at, bool byKey) { emit landmarkDropped(name, at, byKey); });
        landmarks_.push_back(item);
    }
}

LandmarkItem* PhotoView::landmarkItem(LandmarkName name) const {
    for (LandmarkItem* item : landmarks_)
        if (item->landmark() == name) return item;
    return nullptr;
}

void PhotoView::fit() {
    fitted_ = true;
    QRectF about = photo_->boundingRect();
    if (about.isEmpty()) return;
    if (selected_ < animals_.size() && !animals_[selected_].outline.boundaryPx.empty()) {
        const QRectF animal = outlinePath(animals_[selected_].outline).boundingRect();
        const double room = 0.09 * std::max(animal.width(), animal.height()) + 10.0;
        about = animal.adjusted(-room, -room, room, room);
    }
    fitInView(about, Qt::KeepAspectRatio);
}

void PhotoView::zoomBy(double factor) {
    const double zoom = transform().m11() * factor;
    if (zoom > kLargestZoom || zoom < kSmallestZoom) return;
    fitted_ = false;
    scale(factor, factor);
}

void PhotoView::wheelEvent(QWheelEvent* event) {
    zoomBy(std::pow(1.0015, event->angleDelta().y()));
}

void PhotoView::keyPressEvent(QKeyEvent* event) {
    if (tool_ != nullptr && toolKey(*event)) return;
    switch (event->key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            zoomIn();
            return;
        case Qt::Key_Minus:
            zoomOut();
            return;
        case Qt::Key_0:
            fit();
            return;
        default:
            QGraphicsView::keyPressEvent(event);
    }
}

void PhotoView::mousePressEvent(QMouseEvent* event) {
    const QPointF at = mapToScene(event->pos());
    if (tool_ != nullptr) {
        cross_.reset();
        panFrom_ = event->position();
        if (event->button() == Qt::LeftButton) tool_->press(at);
        return;
    }
    const auto* onLandmark = dynamic_cast<LandmarkItem*>(itemAt(event->pos()));
    if (onLandmark == nullptr)
        for (std::size_t k = 0; k < animals_.size(); ++k)
            if (k != selected_ && outlinePath(animals_[k].outline).boundingRect().contains(at)) emit animalClicked(k);
    QGraphicsView::mousePressEvent(event);
}

void PhotoView::mouseMoveEvent(QMouseEvent* event) {
    if (tool_ == nullptr) {
        QGraphicsView::mouseMoveEvent(event);
        return;
    }
    if (event->buttons().testFlag(Qt::MiddleButton) || event->buttons().testFlag(Qt::RightButton)) {
        const QPointF by = event->position() - panFrom_;
        panFrom_ = event->position();
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - qRound(by.x()));
        verticalScrollBar()->setValue(verticalScrollBar()->value() - qRound(by.y()));
        return;
    }
    tool_->move(mapToScene(event->pos()), photoPxPerViewPx());
}

void PhotoView::mouseReleaseEvent(QMouseEvent* event) {
    if (tool_ == nullptr)
        QGraphicsView::mouseReleaseEvent(event);
    else if (event->button() == Qt::LeftButton)
        tool_->release(mapToScene(event->pos()));
}

void PhotoView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (tool_ == nullptr)
        QGraphicsView::mouseDoubleClickEvent(event);
    else if (event->button() == Qt::LeftButton)
        tool_->finish();
}

void PhotoView::resizeEvent(QResizeEvent* event) {
    QGraphicsView::resizeEvent(event);
    if (fitted_) fit();
}

bool PhotoView::focusNextPrevChild(bool next) {
    std::vector<LandmarkItem*> stops;
    for (LandmarkItem* item : landmarks_)
        if (item->flags() & QGraphicsItem::ItemIsFocusable) stops.push_back(item);
    const auto here = std::find_if(stops.begin(), stops.end(), [](LandmarkItem* item) { return item->hasFocus(); });
    std::ptrdiff_t to = here == stops.end() ? (next ? 0 : static_cast<std::ptrdiff_t>(stops.size()) - 1)
                                            : here - stops.begin() + (next ? 1 : -1);
    if (hasFocus() && to >= 0 && to < static_cast<std::ptrdiff_t>(stops.size())) {
        stops[static_cast<std::size_t>(to)]->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
        return true;
    }
    scene()->clearFocus();
    return QGraphicsView::focusNextPrevChild(next);
}

void PhotoView::drawForeground(QPainter* painter, const QRectF&) {
    if (tool_ != nullptr) {
        tool_->paint(*painter, photoPxPerViewPx());
        if (cross_) drawCross(*painter, *cross_, photoPxPerViewPx());
    }
    if (sentence_.isEmpty()) return;
    painter->save();
    painter->resetTransform();
    painter->setPen(QColor(0xC8, 0xD0, 0xD4));
    painter->drawText(viewport()->rect().adjusted(30, 30, -30, -30), Qt::AlignCenter | Qt::TextWordWrap, sentence_);
    painter->restore();
}

}  // namespace ringrule
