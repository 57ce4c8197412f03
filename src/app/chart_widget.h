// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ringrule/sheets/chart.h"

namespace ringrule {

/// A chart in a window, drawn as on paper.
class ChartWidget : public QWidget {
    Q_OBJECT

public:
    explicit ChartWidget(QWidget* parent = nullptr);

    void setChart(Chart chart);
    [[nodiscard]] const Chart& chart() const { return chart_; }
    /// Text size of the chart relative to the window's own.
    void setTextScale(double scale) { textScale_ = scale; }

    [[nodiscard]] QSize sizeHint() const override { return {720, 460}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Chart chart_;
    double textScale_ = 1.0;
};

}  // namespace ringrule
