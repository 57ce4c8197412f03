// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "ringrule/sheets/chart.h"

namespace ringrule {

/// Writes the chart as a drawing (SVG 1.2 Tiny). Throws `Error(NoSpace)` when the file cannot be written.
void writeChartSvg(const Chart& chart, const std::filesystem::path& svg);

/// Writes the chart's readings as RFC 4180 text: series, day or age, value, half-width of its 95 % interval, and
/// whether it is judged. Throws `Error(NoSpace)` when the file cannot be written.
void writeChartCsv(const Chart& chart, const std::filesystem::path& csv);

}  // namespace ringrule
