// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "ringrule/optics/lens_calibration.h"

class QPainter;
class QRectF;

namespace ringrule {

/// Draws what a lens rests on into `area`: on the left the frame with the cells that hold corners, every corner and how
/// far it lies from where the fit puts it, enlarged; on the right the photos with their residuals, those to be retaken
/// marked by colour and word. Without a fit there are no residuals. Text is `textPx` high in the painter's units.
void paintLensChart(QPainter& painter, const QRectF& area, const LensReport& report, double textPx = 13.0);

/// Writes the chart as PNG, 1800 pixels wide. Throws `Error(NoSpace)` when the file cannot be written.
void writeLensChartPng(const LensReport& report, const std::filesystem::path& png);

}  // namespace ringrule
