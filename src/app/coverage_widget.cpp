// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/coverage_widget.h"

#include <QPainter>
#include <algorithm>

#include "ringrule/sheets/colours.h"

namespace ringrule {
namespace {

/// From faint to full over the first so many corners: more tell little more.
constexpr double kFullAt = 40.0;

}  // namespace

void CoverageWidget::setCells(int columns, int rows, std::vector<int> cornersInCell) {
    Q_ASSERT(cornersInCell.size() == static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
    columns_ = columns;
    rows_ = rows;
    corners_ = std::move(cornersInCell);
    const auto empty = std::count(corners_.begin(), corners_.end(), 0);
    setAccessibleDescription(tr("%1 of %2 cells hold no corner").arg(empty).arg(corners_.size()));
    update();
}

void CoverageWidget::paintEvent(QPaintEvent*) {
    if (corners_.empty()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double width = (this->width() - 1.0) / columns_;
    const double height = (this->height() - 1.0) / rows_;
    QFont small = font();
    small.setPixelSize(std::max(8, static_cast<int>(0.36 * std::min(width, height) + 4.0)));
    painter.setFont(small);
    for (int row = 0; row < rows_; ++row)
        for (int column = 0; column < columns_; ++column) {
            const int corners = corners_[static_cast<std::size_t>(row * columns_ + column)];
            const QRectF cell(0.5 + column * width, 0.5 + row * height, width, height);
            QColor fill(colour::kGreen);
            fill.setAlphaF(corners == 0 ? 0.0F : static_cast<float>(0.25 + 0.55 * std::min(1.0, corners / kFullAt)));
            painter.setPen(palette().color(QPalette::Mid));
            painter.setBrush(fill);
            painter.drawRect(cell);
            if (corners == 0) {
                painter.setPen(QPen(QColor(colour::kVermilion), 1.2));
                painter.drawLine(cell.topLeft() + QPointF(4, 4), cell.bottomRight() - QPointF(4, 4));
                continue;
            }
            painter.setPen(palette().color(QPalette::Text));
            painter.drawText(cell, Qt::AlignCenter, QString::number(corners));
        }
}

}  // namespace ringrule
