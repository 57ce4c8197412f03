// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/paint_chart.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <vector>

#include "ringrule/error.h"
#include "ringrule/sheets/drawing_application.h"
#include "sheets/chart_marker.h"
#include "sheets/end_labels.h"

namespace ringrule {
namespace {

constexpr std::size_t kMostNamed = 60;

struct Inks {
    QColor ground;
    QColor text;
    QColor quietText;
    QColor grid;
    QColor quietLine;
    QColor band;

    explicit Inks(bool dark)
        : ground(dark ? 0x1E2327 : 0xFFFFFF),
          text(dark ? 0xE8ECEE : 0x1F2A30),
          quietText(dark ? 0xA3AEB4 : 0x5B6870),
          grid(dark ? 0x343C42 : 0xE3E8EA),
          quietLine(dark ? 0x7C888F : 0x97A3A9),
          band(dark ? QColor(120, 160, 185, 55) : QColor(90, 130, 155, 42)) {}
};

/// One chart being drawn: where its plot lies and how its units map to the painter's.
class ChartPainter {
public:
    ChartPainter(QPainter& painter, const QRectF& area, const Chart& chart, const PaintChartOptions& options)
        : p_(painter), area_(area), chart_(chart), dark_(options.dark), inks_(options.dark), text_(options.textPx) {
        anyHighlighted_ =
            std::any_of(chart.series.begin(), chart.series.end(), [](const ChartSeries& s) { return s.highlighted; });
        font_ = p_.font();
        font_.setPixelSize(std::max(1, qRound(text_)));
        small_ = font_;
        small_.setPixelSize(std::max(1, qRound(0.86 * text_)));
        bold_ = font_;
        bold_.setWeight(QFont::DemiBold);
        placePlot();
    }

    void paint() {
        p_.setRenderHint(QPainter::Antialiasing);
        paintTitles();
        paintAxes();
        p_.save();
        // An axis may be drawn in part only.
        p_.setClipRect(plot_.adjusted(-0.6 * text_, -0.6 * text_, 0.6 * text_, 0.6 * text_));
        paintSpans();
        paintBand();
        paintCurve();
        paintMarks();
        for (const ChartSeries& series : chart_.series)
            if (!series.highlighted) paintSeries(series);
        for (const ChartSeries& series : chart_.series)
            if (series.highlighted) paintSeries(series);
        p_.restore();
        paintEndLabels();
    }

    [[nodiscard]] const QRectF& plot() const { return plot_; }

    void paintEmpty() {
        p_.setFont(font_);
        p_.setPen(inks_.quietText);
        p_.drawText(area_, Qt::AlignCenter | Qt::TextWordWrap, QString::fromStdString(chart_.emptySentence));
    }

private:
    void placePlot() {
        const QFontMetricsF metrics(font_);
        const QFontMetricsF smallMetrics(small_);
        double tickWidth = 0.0;
        for (const ChartTick& tick : chart_.y.ticks)
            tickWidth = std::max(tickWidth, smallMetrics.horizontalAdvance(QString::fromStdString(tick.label)));
        double labelWidth = 0.0;
        for (const ChartSeries& series : chart_.series)
            if (!crowded() || series.highlighted)
                labelWidth =
                    std::max(labelWidth, QFontMetricsF(bold_).horizontalAdvance(QString::fromStdString(series.label)));
        const double titleHeight = chart_.title.empty() ? 0.0 : 2.1 * text_;
        plot_ = area_.adjusted(tickWidth + 1.6 * text_, titleHeight + 2.6 * text_, -(labelWidth + 2.6 * text_),
                               -3.3 * text_);
        if (!chart_.note.empty()) {
            const QRectF room(0, 0, area_.width() - 1.6 * text_, 20.0 * text_);
            noteHeight_ =
                smallMetrics.boundingRect(room, Qt::TextWordWrap, QString::fromStdString(chart_.note)).height();
            plot_.adjust(0, 0, 0, -(noteHeight_ + 0.4 * text_));
        }
    }

    [[nodiscard]] double xAt(double value) const {
        return plot_.left() + plot_.width() * (value - chart_.x.low) / (chart_.x.high - chart_.x.low);
    }
    [[nodiscard]] double yAt(double value) const {
        return plot_.bottom() - plot_.height() * (value - chart_.y.low) / (chart_.y.high - chart_.y.low);
    }

    void paintTitles() {
        double top = area_.top() + 0.8 * text_;
        const double left = area_.left() + 0.8 * text_;
        if (!chart_.title.empty()) {
            QFont title = bold_;
            title.setPixelSize(qRound(1.2 * text_));
            p_.setFont(title);
            p_.setPen(inks_.text);
            p_.drawText(QRectF(left, top, area_.width() - 1.6 * text_, 1.7 * text_), Qt::AlignLeft | Qt::AlignVCenter,
                        QString::fromStdString(chart_.title));
            top += 2.1 * text_;
        }
        p_.setFont(small_);
        p_.setPen(inks_.quietText);
        p_.drawText(QRectF(left, top, area_.width() - 1.6 * text_, 1.3 * text_), Qt::AlignLeft | Qt::AlignVCenter,
                    QString::fromStdString(chart_.y.title));
        p_.drawText(QRectF(plot_.left(), plot_.bottom() + 1.9 * text_, plot_.width(), 1.3 * text_),
                    Qt::AlignHCenter | Qt::AlignVCenter, QString::fromStdString(chart_.x.title));
        p_.drawText(
            QRectF(left, area_.bottom() - noteHeight_ - 0.5 * text_, area_.width() - 1.6 * text_, noteHeight_ + 2),
            Qt::AlignLeft | Qt::TextWordWrap, QString::fromStdString(chart_.note));
    }

    void paintAxes() {
        p_.setFont(small_);
        for (const ChartTick& tick : chart_.y.ticks) {
            const double y = yAt(tick.at);
            p_.setPen(QPen(inks_.grid, 1.0));
            p_.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
            p_.setPen(inks_.quietText);
            p_.drawText(QRectF(area_.left(), y - text_, plot_.left() - area_.left() - 0.6 * text_, 2 * text_),
                        Qt::AlignRight | Qt::AlignVCenter, QString::fromStdString(tick.label));
        }
        p_.setPen(QPen(inks_.quietLine, 1.0));
        p_.drawLine(plot_.bottomLeft(), plot_.bottomRight());
        const QFontMetricsF metrics(small_);
        double free = area_.left();
        for (const ChartTick& tick : chart_.x.ticks) {
            const double x = xAt(tick.at);
            p_.setPen(QPen(inks_.quietLine, 1.0));
            p_.drawLine(QPointF(x, plot_.bottom()), QPointF(x, plot_.bottom() + 0.35 * text_));
            p_.setPen(inks_.quietText);
            // Where two names would run into each other only the first is written.
            const double half = 0.5 * metrics.horizontalAdvance(QString::fromStdString(tick.label));
            if (x - half < free) continue;
            free = x + half + 0.5 * text_;
            p_.drawText(QRectF(x - 5 * text_, plot_.bottom() + 0.5 * text_, 10 * text_, 1.3 * text_), Qt::AlignCenter,
                        QString::fromStdString(tick.label));
        }
    }

    void paintBand() {
        if (chart_.band.empty()) return;
        QPolygonF edge;
        QPolygonF middle;
        for (const ChartBandPoint& point : chart_.band) {
            edge << QPointF(xAt(point.x), yAt(point.high));
            middle << QPointF(xAt(point.x), yAt(point.middle));
        }
        const std::vector<ChartBandPoint> backwards(chart_.band.rbegin(), chart_.band.rend());
        for (const ChartBandPoint& point : backwards) edge << QPointF(xAt(point.x), yAt(point.low));
        p_.setPen(Qt::NoPen);
        p_.setBrush(inks_.band);
        p_.drawPolygon(edge);
        p_.setPen(QPen(inks_.quietLine, 1.2, Qt::DashLine));
        p_.drawPolyline(middle);
    }

    /// Every other one shaded; the names stand along the foot, where growth curves leave room.
    void paintSpans() {
        p_.setFont(small_);
        bool shaded = true;
        for (const ChartSpan& span : chart_.spans) {
            const double left = std::max(plot_.left(), xAt(span.from)), right = std::min(plot_.right(), xAt(span.to));
            if (right <= left) continue;
            if (shaded) p_.fillRect(QRectF(left, plot_.top(), right - left, plot_.height()), inks_.band);
            shaded = !shaded;
            p_.setPen(QPen(inks_.grid.darker(dark_ ? 60 : 115), 1.0));
            if (left > plot_.left()) p_.drawLine(QPointF(left, plot_.top()), QPointF(left, plot_.bottom()));
            p_.setPen(inks_.quietText);
            const QRectF room(left + 0.4 * text_, plot_.bottom() - 1.5 * text_, right - left - 0.5 * text_,
                              1.3 * text_);
            p_.drawText(
                room, Qt::AlignLeft | Qt::AlignVCenter,
                QFontMetricsF(small_).elidedText(QString::fromStdString(span.label), Qt::ElideRight, room.width()));
        }
    }

    void paintCurve() {
        QPolygonF low, middle, high;
        for (const ChartBandPoint& point : chart_.curve) {
            low << QPointF(xAt(point.x), yAt(point.low));
            middle << QPointF(xAt(point.x), yAt(point.middle));
            high << QPointF(xAt(point.x), yAt(point.high));
        }
        p_.setBrush(Qt::NoBrush);
        p_.setPen(QPen(inks_.quietText, 1.0, Qt::DotLine));
        p_.drawPolyline(low);
        p_.drawPolyline(high);
        p_.setPen(QPen(inks_.text, 0.11 * text_));
        p_.drawPolyline(middle);
    }

    void paintMarks() {
        p_.setFont(small_);
        for (const ChartTick& mark : chart_.marks) {
            if (mark.at < chart_.x.low || mark.at > chart_.x.high) continue;
            const double x = xAt(mark.at);
            p_.setPen(QPen(inks_.quietText, 1.0, Qt::DotLine));
            p_.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
            p_.setPen(inks_.quietText);
            const bool leftSide = x > plot_.center().x();
            const double wide = 14.0 * text_;
            p_.drawText(QRectF(leftSide ? x - wide - 0.4 * text_ : x + 0.4 * text_, plot_.top(), wide, 1.3 * text_),
                        static_cast<int>((leftSide ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter),
                        QString::fromStdString(mark.label));
        }
    }

    /// So many lines that their markers, bars and names would cover each other.
    [[nodiscard]] bool crowded() const { return chart_.series.size() > kMostNamed; }

    [[nodiscard]] QColor inkOf(const ChartSeries& series) const {
        if (anyHighlighted_ && !series.highlighted) return inks_.quietLine;
        return seriesColour(series.style, dark_);
    }

    void paintSeries(const ChartSeries& series) {
        const QColor ink = inkOf(series);
        const bool quiet = anyHighlighted_ && !series.highlighted;
        const double width = series.highlighted ? 0.2 * text_ : (quiet ? 0.075 * text_ : 0.12 * text_);
        const double radius = series.highlighted ? 0.36 * text_ : (quiet ? 0.22 * text_ : 0.28 * text_);
        QPolygonF line;
        for (const ChartPoint& point : series.points) line << QPointF(xAt(point.x), yAt(point.y));
        p_.setBrush(Qt::NoBrush);
        if (crowded() && !series.highlighted) {
            // A thousand soft lines would take longer than an eye blinks; hair lines are drawn ten times as fast.
            p_.setRenderHint(QPainter::Antialiasing, false);
            p_.setPen(QPen(ink, 0.0));
            p_.drawPolyline(line);
            p_.setRenderHint(QPainter::Antialiasing);
            return;
        }
        p_.setPen(QPen(ink, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        p_.drawPolyline(line);
        if (!quiet) paintBars(series, ink);
        const QPainterPath marker = seriesMarker(series.style, radius);
        for (const ChartPoint& point : series.points) {
            p_.setPen(QPen(point.hollow ? ink : inks_.ground, 0.09 * text_));
            p_.setBrush(point.hollow ? inks_.ground : ink);
            p_.drawPath(marker.translated(xAt(point.x), yAt(point.y)));
        }
    }

    /// Bars of lines that share their days lie over each other: only those picked out get full ink and caps.
    void paintBars(const ChartSeries& series, QColor ink) {
        const bool full = series.highlighted || chart_.series.size() <= 2;
        ink.setAlpha(full ? 255 : 95);
        p_.setPen(QPen(ink, (full ? 0.1 : 0.13) * text_, Qt::SolidLine, Qt::FlatCap));
        const QPointF cap(full ? 0.28 * text_ : 0.0, 0.0);
        for (const ChartPoint& point : series.points) {
            const QPointF high(xAt(point.x), yAt(point.y + point.u95));
            const QPointF low(xAt(point.x), yAt(point.y - point.u95));
            p_.drawLine(low, high);
            if (!full) continue;
            p_.drawLine(high - cap, high + cap);
            p_.drawLine(low - cap, low + cap);
        }
    }

    void paintEndLabels() {
        std::vector<double> wanted;
        std::vector<const ChartSeries*> named;
        for (const ChartSeries& series : chart_.series) {
            const double end = yAt(series.points.back().y);
            if ((crowded() && !series.highlighted) || end < plot_.top() - 1.0 || end > plot_.bottom() + 1.0) continue;
            named.push_back(&series);
            wanted.push_back(end);
        }
        const auto endsEarly = [&](const ChartSeries& series) {
            return xAt(series.points.back().x) < plot_.right() - 0.15 * plot_.width();
        };
        const std::vector<double> placed = spreadLabels(wanted, 1.25 * text_, plot_.top(), plot_.bottom());
        const double labelLeft = plot_.right() + 1.4 * text_;
        for (std::size_t k = 0; k < named.size(); ++k) {
            const ChartSeries& series = *named[k];
            const QPointF end(std::min(xAt(series.points.back().x), plot_.right()) + 0.5 * text_, wanted[k]);
            p_.setFont(series.highlighted ? bold_ : font_);
            const QColor ink = inkOf(series) == inks_.quietLine ? inks_.quietText : inkOf(series);
            if (endsEarly(series)) {
                // A line that ends long before the others is named at its end, clear of other names.
                const QPointF name(end.x() + 0.2 * text_, placed[k]);
                if (std::abs(placed[k] - wanted[k]) > 0.3 * text_) {
                    p_.setPen(QPen(inks_.grid.darker(dark_ ? 60 : 115), 1.0));
                    p_.drawLine(end, name);
                }
                p_.setPen(ink);
                p_.drawText(QRectF(name.x(), name.y() - text_, 20 * text_, 2 * text_), Qt::AlignLeft | Qt::AlignVCenter,
                            QString::fromStdString(series.label));
                continue;
            }
            p_.setPen(QPen(inks_.grid.darker(dark_ ? 60 : 115), 1.0));
            p_.drawPolyline(QPolygonF({end, QPointF(std::max(end.x(), plot_.right() + 0.5 * text_), wanted[k]),
                                       QPointF(labelLeft - 0.25 * text_, placed[k])}));
            p_.setPen(ink);
            p_.drawText(QRectF(labelLeft, placed[k] - text_, 20 * text_, 2 * text_), Qt::AlignLeft | Qt::AlignVCenter,
                        QString::fromStdString(series.label));
        }
    }

    QPainter& p_;
    QRectF area_;
    const Chart& chart_;
    bool dark_;
    Inks inks_;
    double text_;
    double noteHeight_ = 0.0;
    bool anyHighlighted_ = false;
    QFont font_, small_, bold_;
    QRectF plot_;
};

}  // namespace

void paintChart(QPainter& painter, const QRectF& area, const Chart& chart, const PaintChartOptions& options) {
    painter.save();
    if (options.ground) painter.fillRect(area, Inks(options.dark).ground);
    ChartPainter chartPainter(painter, area, chart, options);
    if (chart.series.empty())
        chartPainter.paintEmpty();
    else
        chartPainter.paint();
    painter.restore();
}

QRectF chartPlot(QPainter& painter, const QRectF& area, const Chart& chart, const PaintChartOptions& options) {
    return ChartPainter(painter, area, chart, options).plot();
}

void writeChartPng(const Chart& chart, const std::filesystem::path& png, const ChartPngOptions& options) {
    ensureDrawingApplication();
    QImage image(options.widthPx, options.heightPx, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.scale(options.pixelsPerUnit, options.pixelsPerUnit);
    const QRectF area(0, 0, options.widthPx / options.pixelsPerUnit, options.heightPx / options.pixelsPerUnit);
    paintChart(painter, area, chart, {.textPx = 14.0, .dark = options.dark});
    painter.end();
    if (!image.save(QString::fromStdString(png.string()), "PNG"))
        throw Error(ErrorKind::NoSpace, "the chart cannot be written; check the folder and the free space",
                    png.string());
}

}  // namespace ringrule
