// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

namespace ringrule {

/// The frame of a camera in cells, each with the number of corners that lens photos showed in it. An empty cell is
/// struck out: the lens's bend there is a guess.
class CoverageWidget : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;
    /// Row by row. Precondition: as many counts as columns × rows.
    void setCells(int columns, int rows, std::vector<int> cornersInCell);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int columns_ = 0;
    int rows_ = 0;
    std::vector<int> corners_;
};

}  // namespace ringrule
