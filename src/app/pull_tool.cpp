// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pull_tool.h"

#include <QPainter>

#include "app/core_text.h"
#include "app/tool_ink.h"
#include "ringrule/outline/edit_outline.h"

namespace ringrule {
namespace {

/// As far as the outline follows the pointer along its edge, in pixels of the view: who zooms in pulls a finer piece.
constexpr double kReachViewPx = 70.0;

}  // namespace

void PullTool::setOutline(std::optional<Outline> outline) {
    cancel();
    outline_ = std::move(outline);
}

void PullTool::press(QPointF atPx) {
    if (!outline_) return;
    grabbed_ = atPx;
    refusal_.clear();
}

void PullTool::move(QPointF atPx, double photoPxPerViewPx) {
    photoPxPerViewPx_ = photoPxPerViewPx;
    if (!grabbed_) return;
    const auto outcome =
        ringrule::pulled(*outline_, pixelOf(*grabbed_), pixelOf(atPx), kReachViewPx * photoPxPerViewPx_);
    refusal_ = outcome ? QString() : reasonText(outcome.refusal().reason, outcome.refusal().sentence);
    if (outcome) shown_ = outcome.value();
    emit changed();
}

void PullTool::release(QPointF atPx) {
    if (!grabbed_) return;
    if (atPx != *grabbed_) move(atPx, photoPxPerViewPx_);
    const std::optional<Outline> drawn = shown_;
    const QString refusal = refusal_;
    cancel();
    if (!refusal.isEmpty())
        emit refused(refusal);
    else if (drawn)
        emit pulled(*drawn);
}

void PullTool::cancel() {
    grabbed_.reset();
    shown_.reset();
    refusal_.clear();
    emit changed();
}

QString PullTool::hint() const {
    return tr(
        "Drag the outline to where it belongs; zoom in to pull a finer piece. By keyboard: arrow keys, Space to take "
        "hold, Space to let go.");
}

void PullTool::paint(QPainter& painter, double photoPxPerViewPx) const {
    if (shown_) drawToolLine(painter, pathOf(shown_->boundaryPx, true), photoPxPerViewPx);
}

}  // namespace ringrule
