// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/sheets/growth_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace ringrule {
namespace {

/// Trunk width over standard length. They come from photos of two views, whose scale errors need not be alike: none
/// cancels.
Estimate widthRatio(const Observation& observation) {
    const Estimate& width = observation.trunkWidthMm;
    const Estimate& length = observation.standardLengthMm;
    if (!width.known() || !length.known() || !(length.value > 0.0)) return {};
    const double ratio = width.value / length.value;
    const auto relative = [&](double widthSd, double lengthSd) {
        return ratio * std::hypot(widthSd / width.value, lengthSd / length.value);
    };
    return {ratio, relative(width.sdRandom, length.sdRandom), relative(width.sdShared, length.sdShared)};
}

Estimate measureOf(const Observation& observation, ChartMeasure measure) {
    switch (measure) {
        case ChartMeasure::StandardLength:
            return observation.standardLengthMm;
        case ChartMeasure::DepthRatio:
            return observation.depthRatio;
        case ChartMeasure::GirthRatio:
            return observation.girthRatio;
        case ChartMeasure::WidthRatio:
            break;
    }
    return widthRatio(observation);
}

double dayNumber(const Observation& observation) {
    return static_cast<double>(observation.on.time_since_epoch().count());
}

bool againstAge(std::span<const GrowthLine> lines, TimeAxis wanted) {
    if (wanted != TimeAxis::Automatic) return wanted == TimeAxis::ByAge;
    return std::all_of(lines.begin(), lines.end(), [](const GrowthLine& line) {
        return std::all_of(line.points.begin(), line.points.end(),
                           [](const Observation& o) { return o.ageDays.has_value(); });
    });
}

ChartSeries seriesOf(const GrowthLine& line, ChartMeasure measure, bool byAge, int style) {
    ChartSeries series{line.label, {}, style, line.highlighted};
    for (const Observation& observation : line.points) {
        const Estimate value = measureOf(observation, measure);
        if (!value.known() || (byAge && !observation.ageDays)) continue;
        const bool hollow = measure != ChartMeasure::StandardLength && !observation.girthFair;
        series.points.push_back(
            {byAge ? *observation.ageDays : dayNumber(observation), value.value, value.u95(), hollow});
    }
    std::sort(series.points.begin(), series.points.end(),
              [](const ChartPoint& a, const ChartPoint& b) { return a.x < b.x; });
    return series;
}

double medianOf(std::vector<double> values) {
    const std::size_t half = values.size() / 2;
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(half), values.end());
    if (values.size() % 2 == 1) return values[half];
    return 0.5 * (values[half] + *std::max_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(half)));
}

std::vector<ChartBandPoint> bandOf(const std::vector<ChartSeries>& series, int smallestGroup) {
    std::map<long, std::vector<double>> valuesOnDay;
    for (const ChartSeries& one : series)
        if (!one.highlighted)
            for (const ChartPoint& point : one.points)
                if (!point.hollow) valuesOnDay[std::lround(point.x)].push_back(point.y);
    std::vector<ChartBandPoint> band;
    for (const auto& [day, values] : valuesOnDay) {
        if (static_cast<int>(values.size()) < smallestGroup) continue;
        const double middle = medianOf(values);
        std::vector<double> deviations;
        for (const double value : values) deviations.push_back(std::abs(value - middle));
        const double spread = 1.4826 * medianOf(deviations);
        band.push_back({static_cast<double>(day), middle - spread, middle, middle + spread});
    }
    return band;
}

struct Range {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
};

/// Every place of y as its decimal logarithm, and the axis with it. What is not positive cannot be drawn.
void takeLogarithms(Chart& chart) {
    const ChartAxis& plain = chart.y;
    double least = std::numeric_limits<double>::infinity();
    for (ChartSeries& series : chart.series) {
        std::erase_if(series.points, [](const ChartPoint& point) { return !(point.y > 0.0); });
        for (const ChartPoint& point : series.points)
            least = std::min(least, std::max(point.y - point.u95, 0.5 * point.y));
        for (ChartPoint& point : series.points) {
            // To first order: an interval of a few per cent is as wide to both sides.
            point.u95 /= point.y * std::log(10.0);
            point.y = std::log10(point.y);
        }
    }
    std::erase_if(chart.series, [](const ChartSeries& series) { return series.points.empty(); });
    std::erase_if(chart.band, [](const ChartBandPoint& point) { return !(point.low > 0.0); });
    for (ChartBandPoint& point : chart.band)
        point = {point.x, std::log10(point.low), std::log10(point.middle), std::log10(point.high)};
    // A curve's band may reach below what can be drawn.
    for (ChartBandPoint& point : chart.curve)
        point = {point.x, std::log10(std::max(point.low, 0.1 * point.middle)), std::log10(point.middle),
                 std::log10(point.high)};
    if (!chart.series.empty()) chart.y = logarithmicAxis(plain.title, 0.98 * least, plain.high);
}

void setAxes(Chart& chart, ChartMeasure measure, bool byAge) {
    Range x;
    Range y;
    for (const ChartSeries& series : chart.series)
        for (const ChartPoint& point : series.points) {
            x.take(point.x);
            y.take(point.y - point.u95);
            y.take(point.y + point.u95);
        }
    for (const auto* band : {&chart.band, &chart.curve})
        for (const ChartBandPoint& point : *band) {
            y.take(point.low);
            y.take(point.high);
        }
    if (!(x.low <= x.high)) return;
    const double margin = std::max(2.0, 0.025 * (x.high - x.low));
    chart.x = byAge ? numberAxis("Age (days)", x.low - margin, x.high + margin, 7, AxisEnds::AsGiven)
                    : dateAxis("Date of session", x.low - margin, x.high + margin);
    chart.y = numberAxis(std::string(chartMeasureTitle(measure)), y.low, y.high, 6);
}

std::string noteFor(const Chart& chart) {
    std::string note = "Bars: 95 % interval of the measure.";
    if (!chart.curve.empty())
        note += " Full line: the group's curve; between the dotted lines 95 % of animals like these.";
    if (!chart.band.empty())
        note += " Shaded: median of the animals not picked out, and one robust standard deviation to either side.";
    const bool anyHollow = std::any_of(chart.series.begin(), chart.series.end(), [](const ChartSeries& s) {
        return std::any_of(s.points.begin(), s.points.end(), [](const ChartPoint& p) { return p.hollow; });
    });
    if (anyHollow) note += " Hollow: brooding or carrying, not judged on girth.";
    return note;
}

}  // namespace

std::string_view chartMeasureTitle(ChartMeasure measure) {
    switch (measure) {
        case ChartMeasure::StandardLength:
            return "Standard length (mm)";
        case ChartMeasure::DepthRatio:
            return "Trunk depth ÷ standard length";
        case ChartMeasure::GirthRatio:
            return "Girth ÷ standard length";
        case ChartMeasure::WidthRatio:
            return "Trunk width ÷ standard length";
    }
    return {};
}

Chart growthChart(std::span<const GrowthLine> lines, ChartMeasure measure, const GrowthChartOptions& options) {
    const bool byAge = againstAge(lines, options.time);
    Chart chart;
    chart.title = options.title;
    chart.emptySentence = "No animal has this measure yet.";
    int place = 0;
    for (const GrowthLine& line : lines) {
        ChartSeries series = seriesOf(line, measure, byAge, line.style >= 0 ? line.style : place);
        ++place;
        if (!series.points.empty()) chart.series.push_back(std::move(series));
    }
    if (options.band) chart.band = bandOf(chart.series, options.smallestGroupForBand);
    if (byAge && measure == ChartMeasure::StandardLength && !chart.series.empty()) chart.curve = options.curve;
    setAxes(chart, measure, byAge);
    if (options.logarithmic) takeLogarithms(chart);
    chart.note = noteFor(chart);
    return chart;
}

void writeGrowthChartPng(std::span<const GrowthLine> lines, ChartMeasure measure, const std::filesystem::path& png,
                         const GrowthChartOptions& options) {
    writeChartPng(growthChart(lines, measure, options), png, options.png);
}

}  // namespace ringrule
