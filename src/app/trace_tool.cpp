// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/trace_tool.h"

#include <QPainter>
#include <algorithm>

#include "app/tool_ink.h"
#include "ringrule/imaging/photo.h"

namespace ringrule {
namespace {

/// A click so near to the first one closes the trace, in pixels of the view.
constexpr double kCloseViewPx = 12.0;
/// A stretch reaches so far on the view, within what the engine does quickly.
constexpr double kReachViewPx = 260.0;
constexpr double kLeastReachPx = 150.0;
constexpr double kMostReachPx = 500.0;

bool onPhoto(const Photo& photo, PixelPoint at) {
    return at.x >= 0.0 && at.y >= 0.0 && at.x <= photo.grey.cols - 1.0 && at.y <= photo.grey.rows - 1.0;
}

}  // namespace

void TraceTool::setPhoto(std::shared_ptr<const Photo> photo) {
    if (photo == photo_) return;
    cancel();
    photo_ = std::move(photo);
}

void TraceTool::press(QPointF atPx) {
    const PixelPoint at = pixelOf(atPx);
    if (!photo_ || !onPhoto(*photo_, at)) return;
    const bool closes = clicks_.size() > 2 && distance(at, clicks_.front()) < kCloseViewPx * photoPxPerViewPx_;
    if (trace_) {
        stretches_.push_back(trace_->to(closes ? clicks_.front() : at));
        clicks_.push_back(stretches_.back().back());
    } else {
        clicks_.push_back(at);
    }
    if (closes) {
        finish();
        return;
    }
    beginStretch();
}

void TraceTool::beginStretch() {
    TraceOptions options;
    options.reachPx = std::clamp(kReachViewPx * photoPxPerViewPx_, kLeastReachPx, kMostReachPx);
    trace_.emplace(*photo_, clicks_.back(), options);
    if (clicks_.size() == 1) clicks_.back() = trace_->from();
    live_.clear();
    emit changed();
}

void TraceTool::move(QPointF atPx, double photoPxPerViewPx) {
    photoPxPerViewPx_ = photoPxPerViewPx;
    const PixelPoint at = pixelOf(atPx);
    if (!trace_ || !onPhoto(*photo_, at)) return;
    live_ = trace_->to(at);
    emit changed();
}

void TraceTool::finish() {
    const std::vector<PixelPoint> clicks = clicks_;
    const bool closed = clicks.size() > 3 && distance(clicks.front(), clicks.back()) < kCloseViewPx * photoPxPerViewPx_;
    cancel();
    if (clicks.size() > 1) emit traced(clicks, closed);
}

void TraceTool::stepBack() {
    if (clicks_.size() < 2) {
        cancel();
        return;
    }
    clicks_.pop_back();
    stretches_.pop_back();
    beginStretch();
}

void TraceTool::cancel() {
    clicks_.clear();
    stretches_.clear();
    trace_.reset();
    live_.clear();
    emit changed();
}

QString TraceTool::hint() const {
    return tr(
        "Click along the edge from one place of the outline to another, or all round an animal; double click or Enter "
        "ends it. Backspace takes a click back, Esc gives up. By keyboard: arrow keys and Space.");
}

void TraceTool::paint(QPainter& painter, double photoPxPerViewPx) const {
    for (const auto& stretch : stretches_) drawToolLine(painter, pathOf(stretch), photoPxPerViewPx);
    drawToolLine(painter, pathOf(live_), photoPxPerViewPx);
    for (const PixelPoint& click : clicks_) drawToolDot(painter, pointOf(click), photoPxPerViewPx);
}

}  // namespace ringrule
