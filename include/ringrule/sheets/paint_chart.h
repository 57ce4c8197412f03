// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "ringrule/sheets/chart.h"

class QPainter;
class QRectF;

namespace ringrule {

struct PaintChartOptions {
    double textPx = 13.0;  ///< height of ordinary text in the painter's units
    bool dark = false;     ///< light lines for a dark ground
    bool ground = true;    ///< fill the rectangle first
};

/// Draws `chart` into `area`: band below, quiet lines next, highlighted lines on top, each named at its end.
void paintChart(QPainter& painter, const QRectF& area, const Chart& chart, const PaintChartOptions& options = {});

/// The rectangle of `area` in which `paintChart` draws the points: its edges are the ends of the axes.
[[nodiscard]] QRectF chartPlot(QPainter& painter, const QRectF& area, const Chart& chart,
                               const PaintChartOptions& options = {});

struct ChartPngOptions {
    int widthPx = 1800;
    int heightPx = 1120;
    double pixelsPerUnit = 2.0;  ///< 2: text and lines drawn twice as large, for print and dense screens
    bool dark = false;
};

/// Writes the chart as PNG. Throws `Error(NoSpace)` when the file cannot be written.
void writeChartPng(const Chart& chart, const std::filesystem::path& png, const ChartPngOptions& options = {});

}  // namespace ringrule
