// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "app/photo_tool.h"
#include "ringrule/outline/outline.h"

namespace ringrule {

/// Takes hold of an animal's outline and draws it to another place; neighbours follow.
class PullTool : public PhotoTool {
    Q_OBJECT

public:
    using PhotoTool::PhotoTool;
    /// The outline to pull; nothing can be pulled without one.
    void setOutline(std::optional<Outline> outline);

    void press(QPointF atPx) override;
    void move(QPointF atPx, double photoPxPerViewPx) override;
    void release(QPointF atPx) override;
    void cancel() override;
    [[nodiscard]] bool begun() const override { return grabbed_.has_value(); }
    [[nodiscard]] QString hint() const override;
    void paint(QPainter& painter, double photoPxPerViewPx) const override;

signals:
    void pulled(const ringrule::Outline& outline);
    /// Why the outline cannot be pulled there.
    void refused(const QString& sentence);

private:
    std::optional<Outline> outline_;
    std::optional<QPointF> grabbed_;
    std::optional<Outline> shown_;
    QString refusal_;
    double photoPxPerViewPx_ = 1.0;
};

}  // namespace ringrule
