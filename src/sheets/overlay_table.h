// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "ringrule/sheets/overlay.h"

class QPainter;
class QRectF;

namespace ringrule {

/// The height that the table under an overlay needs at this width.
[[nodiscard]] double overlayTableHeight(std::span<const OverlayAnimal> animals, double width);

/// Draws the measures with their intervals: all of one animal's with its remarks, the main ones of several.
void paintOverlayTable(QPainter& painter, const QRectF& area, std::span<const OverlayAnimal> animals);

}  // namespace ringrule
