// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "app/photo_tool.h"
#include "ringrule/outline/trace.h"

namespace ringrule {

/// Clicks along an animal's edge; the line between them follows the edge that is seen.
class TraceTool : public PhotoTool {
    Q_OBJECT

public:
    using PhotoTool::PhotoTool;
    /// The photo to trace on; nothing can be traced before it is set.
    void setPhoto(std::shared_ptr<const Photo> photo);

    void press(QPointF atPx) override;
    void move(QPointF atPx, double photoPxPerViewPx) override;
    void release(QPointF) override {}
    void finish() override;
    void stepBack() override;
    void cancel() override;
    [[nodiscard]] bool begun() const override { return !clicks_.empty(); }
    [[nodiscard]] bool drags() const override { return false; }
    [[nodiscard]] QString hint() const override;
    void paint(QPainter& painter, double photoPxPerViewPx) const override;

signals:
    /// All clicks of a trace that is done. `closed`: the last lies on the first.
    void traced(const std::vector<ringrule::PixelPoint>& clicks, bool closed);

private:
    void beginStretch();

    std::shared_ptr<const Photo> photo_;
    std::vector<PixelPoint> clicks_;
    std::vector<std::vector<PixelPoint>> stretches_;  ///< between the clicks
    std::optional<EdgeTrace> trace_;                  ///< from the last click
    std::vector<PixelPoint> live_;                    ///< from the last click to the pointer
    double photoPxPerViewPx_ = 1.0;
};

}  // namespace ringrule
