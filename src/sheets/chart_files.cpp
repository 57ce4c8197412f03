// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/chart_files.h"

#include <QPainter>
#include <QSvgGenerator>
#include <chrono>
#include <cmath>
#include <fstream>

#include "ringrule/error.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/sheets/drawing_application.h"
#include "ringrule/sheets/paint_chart.h"

namespace ringrule {
namespace {

constexpr int kWidth = 900, kHeight = 560;

[[noreturn]] void notWritten(const std::filesystem::path& path) {
    throw Error(ErrorKind::NoSpace, "the chart cannot be written; check the folder and the free space", path.string());
}

/// Quoted where it must be, and never taken for a formula by a spreadsheet.
std::string field(std::string text) {
    if (!text.empty() && std::string_view("=+-@").find(text.front()) != std::string_view::npos) text.insert(0, "'");
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    for (std::size_t at = text.find('"'); at != std::string::npos; at = text.find('"', at + 2)) text.insert(at, 1, '"');
    return '"' + text + '"';
}

std::string placeOf(const ChartAxis& axis, double x) {
    const auto whole = std::lround(x);
    return axis.dates ? formatDate(Date(std::chrono::days(whole))) : std::to_string(whole);
}

}  // namespace

void writeChartSvg(const Chart& chart, const std::filesystem::path& svg) {
    ensureDrawingApplication();
    QSvgGenerator generator;
    generator.setFileName(QString::fromStdString(svg.string()));
    generator.setSize({kWidth, kHeight});
    generator.setViewBox(QRect(0, 0, kWidth, kHeight));
    generator.setTitle(QString::fromStdString(chart.y.title));
    QPainter painter;
    if (!painter.begin(&generator)) notWritten(svg);
    paintChart(painter, QRectF(0, 0, kWidth, kHeight), chart, {.textPx = 14.0});
    painter.end();
    std::error_code error;
    if (std::filesystem::file_size(svg, error) == 0 || error) notWritten(svg);
}

void writeChartCsv(const Chart& chart, const std::filesystem::path& csv) {
    std::ofstream out(csv, std::ios::binary);
    out << "series," << (chart.x.dates ? "date" : "age_days") << ',' << field(chart.y.title) << ",u95,judged\r\n";
    for (const ChartSeries& series : chart.series) {
        for (const ChartPoint& point : series.points) {
            double value = point.y, u95 = point.u95;
            if (chart.y.logarithmic) {
                value = std::pow(10.0, point.y);
                u95 *= value * std::log(10.0);
            }
            out << field(series.label) << ',' << placeOf(chart.x, point.x) << ',' << value << ',' << u95 << ','
                << (point.hollow ? "no" : "yes") << "\r\n";
        }
    }
    out.close();
    if (!out) notWritten(csv);
}

}  // namespace ringrule
