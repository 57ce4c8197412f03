// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "app/photo_tool.h"
#include "ringrule/geometry/point.h"

namespace ringrule {

/// Draws a line across two animals that touch.
class CutTool : public PhotoTool {
    Q_OBJECT

public:
    using PhotoTool::PhotoTool;

    void press(QPointF atPx) override;
    void move(QPointF atPx, double photoPxPerViewPx) override;
    void release(QPointF atPx) override;
    void cancel() override;
    [[nodiscard]] bool begun() const override { return from_.has_value(); }
    [[nodiscard]] QString hint() const override;
    void paint(QPainter& painter, double photoPxPerViewPx) const override;

signals:
    void cut(const std::vector<ringrule::PixelPoint>& line);

private:
    std::optional<QPointF> from_;
    QPointF to_;
};

}  // namespace ringrule
