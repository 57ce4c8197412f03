// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cut_tool.h"

#include <QPainter>

#include "app/tool_ink.h"

namespace ringrule {

void CutTool::press(QPointF atPx) {
    from_ = atPx;
    to_ = atPx;
}

void CutTool::move(QPointF atPx, double) {
    if (!from_) return;
    to_ = atPx;
    emit changed();
}

void CutTool::release(QPointF atPx) {
    if (!from_) return;
    const std::vector<PixelPoint> line{pixelOf(*from_), pixelOf(atPx)};
    cancel();
    if (!(line.front() == line.back())) emit cut(line);
}

void CutTool::cancel() {
    from_.reset();
    emit changed();
}

QString CutTool::hint() const {
    return tr(
        "Draw a line across, from outside to outside, where one animal ends and the other begins. By keyboard: arrow "
        "keys, Space at both ends.");
}

void CutTool::paint(QPainter& painter, double photoPxPerViewPx) const {
    if (!from_) return;
    drawToolLine(painter, pathOf({pixelOf(*from_), pixelOf(to_)}), photoPxPerViewPx);
    drawToolDot(painter, *from_, photoPxPerViewPx);
}

}  // namespace ringrule
