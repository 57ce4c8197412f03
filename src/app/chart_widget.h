// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPixmap>
#include <QWidget>
#include <functional>
#include <optional>

#include "ringrule/sheets/chart.h"

namespace ringrule {

/// A chart in a window, drawn as on paper. Where `setExplorable`, the wheel and + and − draw its time axis out about
/// the mouse, dragging and the arrow keys move along it, a double click or 0 shows all of it, the reading nearest to
/// the mouse is told, and a click chooses it.
class ChartWidget : public QWidget {
    Q_OBJECT

public:
    explicit ChartWidget(QWidget* parent = nullptr);

    void setChart(Chart chart);
    [[nodiscard]] const Chart& chart() const { return chart_; }
    /// The chart as it is drawn now, its time axis in part or whole.
    [[nodiscard]] const Chart& shown() const { return shown_; }
    /// Text size of the chart relative to the window's own.
    void setTextScale(double scale) { textScale_ = scale; }
    void setExplorable();

    /// A reading: the point of a series of `shown()`.
    struct Reading {
        std::size_t series = 0;
        std::size_t point = 0;
        friend bool operator==(const Reading&, const Reading&) = default;
    };
    /// The reading nearest to that place of the widget, if one is near.
    [[nodiscard]] std::optional<Reading> readingAt(QPointF place) const;
    [[nodiscard]] QPointF placeOf(const Reading& reading) const;
    /// That reading in words, e.g. "P4, 2031-03-03: 112.4 ± 0.6".
    [[nodiscard]] QString wordsOf(const Reading& reading) const;
    void showTimes(double low, double high);

    [[nodiscard]] QSize sizeHint() const override { return {720, 460}; }

signals:
    /// The label of the series, and where the reading is on the time axis.
    void readingChosen(const QString& label, double x);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    void refresh();
    void drawPicture();
    void paintReading(QPainter& painter) const;
    void zoomAbout(double x, double factor);
    void moveBy(double days);

    Chart chart_;
    Chart shown_;
    double textScale_ = 1.0;
    bool explorable_ = false;
    QPixmap picture_;  ///< drawn once; what follows the mouse is drawn over it
    QRectF plot_;
    std::optional<Reading> under_;
    std::optional<QPointF> pressed_;
    double pressedLow_ = 0.0;
    bool dragged_ = false;
};

}  // namespace ringrule
