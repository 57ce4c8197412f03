// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/chart_widget.h"

#include <QFontInfo>
#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <chrono>
#include <cmath>

#include "app/chart_language.h"
#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/sheets/paint_chart.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {
namespace {

constexpr double kNear = 18.0;
constexpr double kShortestDays = 7.0;
constexpr double kDragFrom = 4.0;
constexpr double kZoomStep = 0.75;

/// The chart with the part [low, high] of its time axis; lines keep the points beside it, so that they go on to the
/// edge.
Chart partOf(const Chart& chart, double low, double high) {
    Chart part = chart;
    part.x =
        chart.x.dates ? dateAxis(chart.x.title, low, high) : numberAxis(chart.x.title, low, high, 7, AxisEnds::AsGiven);
    part.x.low = low;
    part.x.high = high;
    std::erase_if(part.x.ticks, [&](const ChartTick& tick) { return tick.at < low || tick.at > high; });
    for (ChartSeries& series : part.series) {
        const auto from = std::find_if(series.points.begin(), series.points.end(),
                                       [&](const ChartPoint& point) { return point.x >= low; });
        const auto to = std::find_if(from, series.points.end(), [&](const ChartPoint& p) { return p.x > high; });
        series.points = std::vector<ChartPoint>(from == series.points.begin() ? from : from - 1,
                                                to == series.points.end() ? to : to + 1);
    }
    std::erase_if(part.series, [](const ChartSeries& series) { return series.points.empty(); });
    return part;
}

}  // namespace

ChartWidget::ChartWidget(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::NoFocus);
}

void ChartWidget::setExplorable() {
    explorable_ = true;
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setToolTip(
        tr("Wheel or + and −: draw the time out. Drag or arrow keys: move along it. Double click or 0: all of it. "
           "Click a reading: its photo."));
}

void ChartWidget::setChart(Chart chart) {
    const bool sameTimes = chart.x.low == chart_.x.low && chart.x.high == chart_.x.high;
    const double low = shown_.x.low, high = shown_.x.high;
    chart_ = std::move(chart);
    inOwnLanguage(chart_);
    shown_ = chart_;
    // Another choice of animals keeps the stretch of time that is looked at.
    if (sameTimes && !chart_.series.empty() && (low > chart_.x.low || high < chart_.x.high))
        shown_ = partOf(chart_, low, high);
    inOwnLanguage(shown_);
    QStringList lines;
    for (const ChartSeries& series : chart_.series) lines << QString::fromStdString(series.label);
    setAccessibleDescription(QString::fromStdString(chart_.y.title) + ": " + lines.join(", "));
    refresh();
}

void ChartWidget::refresh() {
    picture_ = {};
    under_.reset();
    update();
}

void ChartWidget::showTimes(double low, double high) {
    const double whole = chart_.x.high - chart_.x.low;
    const double span = std::clamp(high - low, std::min(kShortestDays, whole), whole);
    const double from = std::clamp(low, chart_.x.low, chart_.x.high - span);
    shown_ = span >= whole ? chart_ : partOf(chart_, from, from + span);
    inOwnLanguage(shown_);
    refresh();
}

void ChartWidget::zoomAbout(double x, double factor) {
    const double low = shown_.x.low, high = shown_.x.high;
    showTimes(x - (x - low) * factor, x + (high - x) * factor);
}

void ChartWidget::moveBy(double days) {
    showTimes(shown_.x.low + days, shown_.x.high + days);
}

void ChartWidget::drawPicture() {
    const double dense = devicePixelRatioF();
    picture_ = QPixmap((QSizeF(size()) * dense).toSize());
    picture_.setDevicePixelRatio(dense);
    picture_.fill(Qt::transparent);
    QPainter painter(&picture_);
    painter.setFont(font());
    PaintChartOptions options;
    options.textPx = textScale_ * QFontInfo(font()).pixelSize();
    options.dark = palette().color(QPalette::Base).lightness() < 128;
    options.ground = false;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRoundedRect(rect(), 6, 6);
    const QRectF area = QRectF(rect()).adjusted(6, 4, -2, -4);
    paintChart(painter, area, shown_, options);
    plot_ = chartPlot(painter, area, shown_, options);
}

QPointF ChartWidget::placeOf(const Reading& reading) const {
    const ChartPoint& point = shown_.series[reading.series].points[reading.point];
    return {plot_.left() + plot_.width() * (point.x - shown_.x.low) / (shown_.x.high - shown_.x.low),
            plot_.bottom() - plot_.height() * (point.y - shown_.y.low) / (shown_.y.high - shown_.y.low)};
}

std::optional<ChartWidget::Reading> ChartWidget::readingAt(QPointF place) const {
    std::optional<Reading> nearest;
    double least = kNear;
    const QRectF room = plot_.adjusted(-kNear, -kNear, kNear, kNear);
    if (!room.contains(place)) return nearest;
    for (std::size_t s = 0; s < shown_.series.size(); ++s)
        for (std::size_t k = 0; k < shown_.series[s].points.size(); ++k) {
            const QPointF at = placeOf({s, k});
            // A line that was picked out is meant rather than one that lies behind it.
            const double away =
                std::hypot(at.x() - place.x(), at.y() - place.y()) - (shown_.series[s].highlighted ? 3.0 : 0.0);
            if (away >= least || !plot_.adjusted(-1, -1, 1, 1).contains(at)) continue;
            least = away;
            nearest = Reading{s, k};
        }
    return nearest;
}

QString ChartWidget::wordsOf(const Reading& reading) const {
    const ChartSeries& series = shown_.series[reading.series];
    const ChartPoint& point = series.points[reading.point];
    const QString when = shown_.x.dates ? dayText(Date(std::chrono::days(static_cast<int>(std::lround(point.x)))))
                                        : tr("%n days old", nullptr, static_cast<int>(std::lround(point.x)));
    Estimate value{point.y, point.u95 / kSdsInHalf95, 0.0};
    if (shown_.y.logarithmic) {
        value.value = std::pow(10.0, point.y);
        value.sdRandom *= value.value * std::log(10.0);
    }
    return tr("%1, %2: %3").arg(QString::fromStdString(series.label), when, numberText(value));
}

void ChartWidget::paintReading(QPainter& painter) const {
    const QPointF at = placeOf(*under_);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette().color(QPalette::Text), 1.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, 8.0, 8.0);
    const QString words = wordsOf(*under_);
    const QFontMetricsF metrics(font());
    QRectF box(0, 0, metrics.horizontalAdvance(words) + 16.0, metrics.height() + 8.0);
    box.moveTopLeft(at + QPointF(12.0, -box.height() - 8.0));
    if (box.right() > width() - 4.0) box.moveRight(at.x() - 12.0);
    if (box.left() < 4.0) box.moveLeft(4.0);
    if (box.top() < 4.0) box.moveTop(at.y() + 12.0);
    painter.setPen(QPen(palette().color(QPalette::Text), 1.0));
    painter.setBrush(palette().color(QPalette::ToolTipBase));
    painter.drawRoundedRect(box, 4, 4);
    painter.setPen(palette().color(QPalette::ToolTipText));
    painter.drawText(box, Qt::AlignCenter, words);
}

void ChartWidget::paintEvent(QPaintEvent*) {
    if (picture_.isNull()) drawPicture();
    QPainter painter(this);
    painter.drawPixmap(0, 0, picture_);
    if (hasFocus() && explorable_) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 1.4));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
    }
    if (under_) paintReading(painter);
}

void ChartWidget::resizeEvent(QResizeEvent*) {
    refresh();
}

void ChartWidget::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) refresh();
    QWidget::changeEvent(event);
}

void ChartWidget::mousePressEvent(QMouseEvent* event) {
    if (!explorable_ || event->button() != Qt::LeftButton) return;
    pressed_ = event->position();
    pressedLow_ = shown_.x.low;
    dragged_ = false;
}

void ChartWidget::mouseMoveEvent(QMouseEvent* event) {
    if (!explorable_) return;
    if (pressed_ && event->buttons().testFlag(Qt::LeftButton)) {
        const double by = event->position().x() - pressed_->x();
        dragged_ = dragged_ || std::abs(by) > kDragFrom;
        const double span = shown_.x.high - shown_.x.low;
        if (dragged_ && plot_.width() > 0.0) {
            const double low = pressedLow_ - by * span / plot_.width();
            showTimes(low, low + span);
        }
        return;
    }
    const std::optional<Reading> under = readingAt(event->position());
    if (under == under_) return;
    under_ = under;
    setCursor(under_ ? Qt::PointingHandCursor : Qt::ArrowCursor);
    update();
}

void ChartWidget::mouseReleaseEvent(QMouseEvent* event) {
    if (!pressed_) return;
    pressed_.reset();
    const std::optional<Reading> under = readingAt(event->position());
    if (dragged_ || !under) return;
    const ChartSeries& series = shown_.series[under->series];
    emit readingChosen(QString::fromStdString(series.label), series.points[under->point].x);
}

void ChartWidget::mouseDoubleClickEvent(QMouseEvent*) {
    if (explorable_) showTimes(chart_.x.low, chart_.x.high);
}

void ChartWidget::wheelEvent(QWheelEvent* event) {
    if (!explorable_ || !plot_.contains(event->position())) {
        event->ignore();
        return;
    }
    const double share = (event->position().x() - plot_.left()) / plot_.width();
    zoomAbout(shown_.x.low + share * (shown_.x.high - shown_.x.low),
              std::pow(kZoomStep, event->angleDelta().y() / 120.0));
}

void ChartWidget::keyPressEvent(QKeyEvent* event) {
    const double span = shown_.x.high - shown_.x.low, middle = 0.5 * (shown_.x.high + shown_.x.low);
    switch (explorable_ ? event->key() : 0) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoomAbout(middle, kZoomStep);
        case Qt::Key_Minus:
            return zoomAbout(middle, 1.0 / kZoomStep);
        case Qt::Key_Left:
            return moveBy(-0.2 * span);
        case Qt::Key_Right:
            return moveBy(0.2 * span);
        case Qt::Key_0:
            return showTimes(chart_.x.low, chart_.x.high);
        default:
            QWidget::keyPressEvent(event);
    }
}

void ChartWidget::leaveEvent(QEvent*) {
    under_.reset();
    update();
}

}  // namespace ringrule
