// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace ringrule {

/// A chart as a value: what to draw, in the chart's own units. `paint_chart.h` draws it, on a picture or in a window.
struct ChartPoint {
    double x = 0.0;
    double y = 0.0;
    double u95 = 0.0;     ///< half-width of the 95 % interval of y
    bool hollow = false;  ///< drawn unfilled: shown, but not judged
};

struct ChartSeries {
    std::string label;               ///< written at the line's end
    std::vector<ChartPoint> points;  ///< in order of x
    int style = 0;                   ///< colour and marker shape go together: two series never differ by colour alone
    bool highlighted = false;
};

/// What the others do: their median and its spread to either side.
struct ChartBandPoint {
    double x = 0.0;
    double low = 0.0;
    double middle = 0.0;
    double high = 0.0;
};

struct ChartTick {
    double at = 0.0;
    std::string label;
};

/// A stretch of the x axis shaded from top to bottom, e.g. the time of a diet.
struct ChartSpan {
    double from = 0.0;
    double to = 0.0;
    std::string label;
};

struct ChartAxis {
    std::string title;
    double low = 0.0;
    double high = 1.0;
    std::vector<ChartTick> ticks;
    bool dates = false;        ///< days since 1970-01-01
    bool logarithmic = false;  ///< places are decimal logarithms of the values; labels are the values
};

struct Chart {
    std::string title;
    ChartAxis x;
    ChartAxis y;
    std::vector<ChartSeries> series;
    std::vector<ChartBandPoint> band;
    std::vector<ChartBandPoint> curve;  ///< a fitted curve with its band
    std::vector<ChartSpan> spans;       ///< neighbours are told apart by shade and by their names
    std::vector<ChartTick> marks;       ///< upright lines at a moment, e.g. a change of food
    std::string note;                   ///< small print under the chart: what band, bars and hollow marks mean
    std::string emptySentence;          ///< said in place of the chart when no series has a point
};

enum class AxisEnds { OnTicks, AsGiven };

/// A numeric axis over [low, high] with about `wantedTicks` ticks at 1, 2 or 5 times a power of ten; unless its ends
/// are to stay as given, it begins and ends on a tick. Precondition: low <= high.
[[nodiscard]] ChartAxis numberAxis(std::string title, double low, double high, int wantedTicks = 6,
                                   AxisEnds ends = AxisEnds::OnTicks);

/// A logarithmic axis over values in [low, high], its ends as given. Precondition: 0 < low <= high.
[[nodiscard]] ChartAxis logarithmicAxis(std::string title, double low, double high, int wantedTicks = 6);

/// A time axis over days since 1970-01-01 with ticks on firsts of months (or on days when the span is short), labelled
/// as dates.
[[nodiscard]] ChartAxis dateAxis(std::string title, double lowDay, double highDay, int wantedTicks = 7);

}  // namespace ringrule
