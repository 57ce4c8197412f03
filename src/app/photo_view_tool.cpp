// SPDX-License-Identifier: GPL-3.0-or-later
// The photo view while a tool works on it.
#include <QKeyEvent>

#include "app/photo_tool.h"
#include "app/photo_view.h"

namespace ringrule {
namespace {
constexpr double kCrossStepViewPx = 8.0;
constexpr double kFineStepViewPx = 1.0;
}  // namespace

void PhotoView::setTool(PhotoTool* tool) {
    if (tool_ == tool) return;
    if (tool_ != nullptr) {
        tool_->cancel();
        tool_->disconnect(this);
    }
    tool_ = tool;
    cross_.reset();
    setDragMode(tool_ == nullptr ? ScrollHandDrag : NoDrag);
    viewport()->setCursor(tool_ == nullptr ? Qt::OpenHandCursor : Qt::CrossCursor);
    viewport()->setMouseTracking(tool_ != nullptr);
    if (tool_ != nullptr) connect(tool_, &PhotoTool::changed, viewport(), qOverload<>(&QWidget::update));
    viewport()->update();
}

void PhotoView::moveCross(QPointF byViewPx) {
    const QPointF from = cross_.value_or(mapToScene(viewport()->rect().center()));
    cross_ = from + byViewPx * photoPxPerViewPx();
    ensureVisible(QRectF(*cross_, QSizeF(1, 1)), 30, 30);
    tool_->move(*cross_, photoPxPerViewPx());
    viewport()->update();
}

void PhotoView::pressCross() {
    if (!cross_) moveCross({0, 0});
    const bool held = tool_->begun() && tool_->drags();
    if (!held) tool_->press(*cross_);
    if (held || !tool_->drags()) tool_->release(*cross_);
    viewport()->update();
}

bool PhotoView::toolKey(const QKeyEvent& event) {
    const double step = event.modifiers().testFlag(Qt::ShiftModifier) ? kFineStepViewPx : kCrossStepViewPx;
    switch (event.key()) {
        case Qt::Key_Left:
            moveCross({-step, 0});
            return true;
        case Qt::Key_Right:
            moveCross({step, 0});
            return true;
        case Qt::Key_Up:
            moveCross({0, -step});
            return true;
        case Qt::Key_Down:
            moveCross({0, step});
            return true;
        case Qt::Key_Space:
            pressCross();
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            tool_->finish();
            return true;
        case Qt::Key_Backspace:
            tool_->stepBack();
            return true;
        case Qt::Key_Escape:
            tool_->cancel();
            return true;
        default:
            return false;
    }
}

}  // namespace ringrule
