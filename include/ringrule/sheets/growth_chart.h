// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/growth/observation.h"
#include "ringrule/sheets/chart.h"
#include "ringrule/sheets/paint_chart.h"

namespace ringrule {

/// One animal's history on a growth chart.
struct GrowthLine {
    std::string label;
    std::vector<Observation> points;
    bool highlighted = false;
    int style = -1;  ///< colour and marker shape of its series; −1: by its place among the lines
};

enum class ChartMeasure { StandardLength, DepthRatio, GirthRatio, WidthRatio };

[[nodiscard]] std::string_view chartMeasureTitle(ChartMeasure measure);  ///< e.g. "Standard length (mm)"

enum class TimeAxis {
    Automatic,  ///< age when every observation has one, else the date
    ByAge,      ///< age; observations without one are left out
    ByDate,
};

struct GrowthChartOptions {
    std::string title;
    TimeAxis time = TimeAxis::Automatic;
    bool band = true;                   ///< median and spread of the lines that are not highlighted
    bool logarithmic = false;           ///< lengths that grow by a constant share are straight lines then
    std::vector<ChartBandPoint> curve;  ///< of length against age, drawn on that chart only
    int smallestGroupForBand = 5;       ///< fewer animals carry no spread (see `docs/judgement.md`)
    ChartPngOptions png;
};

/// The chart of a measure against age or date. The band is the median of the lines that are not highlighted and one
/// robust standard deviation (1.4826 times the median absolute deviation) to either side, at each day on which enough
/// of them were measured.
[[nodiscard]] Chart growthChart(std::span<const GrowthLine> lines, ChartMeasure measure,
                                const GrowthChartOptions& options = {});

/// Writes that chart as PNG. Throws `Error(NoSpace)` when the file cannot be written.
void writeGrowthChartPng(std::span<const GrowthLine> lines, ChartMeasure measure, const std::filesystem::path& png,
                         const GrowthChartOptions& options = {});

}  // namespace ringrule
