// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/chart_widget.h"

#include <QFontInfo>
#include <QPainter>

#include "ringrule/sheets/paint_chart.h"

namespace ringrule {

ChartWidget::ChartWidget(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::NoFocus);
}

void ChartWidget::setChart(Chart chart) {
    chart_ = std::move(chart);
    QStringList lines;
    for (const ChartSeries& series : chart_.series) lines << QString::fromStdString(series.label);
    setAccessibleDescription(QString::fromStdString(chart_.y.title) + ": " + lines.join(", "));
    update();
}

void ChartWidget::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const bool dark = palette().color(QPalette::Base).lightness() < 128;
    PaintChartOptions options;
    options.textPx = textScale_ * QFontInfo(font()).pixelSize();
    options.dark = dark;
    options.ground = false;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRoundedRect(rect(), 6, 6);
    paintChart(painter, QRectF(rect()).adjusted(6, 4, -2, -4), chart_, options);
}

}  // namespace ringrule
