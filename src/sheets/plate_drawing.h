// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/optics/box_file.h"
#include "ringrule/sheets/plate_sheet.h"

class QPainter;

namespace ringrule {

/// Draws the plate at the painter's origin: ground, markers, and millimetre scales along the lower and the left edge,
/// numbered from the plate's top-left corner as its frame is.
void drawPlate(QPainter& painter, const PlateLayout& plate, PlateTone tone);

}  // namespace ringrule
