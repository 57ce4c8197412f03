// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ringrule/optics/box_file.h"
#include "ringrule/sheets/plate_sheet.h"
#include "sheets/plate_tiles.h"

namespace ringrule {

/// What to do with the bars, in two or three lines at the foot of each sheet (HTML). `downMm` is 0 where there was no
/// room for a bar down.
[[nodiscard]] QString barNote(double acrossMm, double downMm, const PlateSheetOptions& options);

/// How to make the plate from the sheets: scale, joins, laminating, mounting, first checks (HTML).
[[nodiscard]] QString makingNotes(const Box& box, const PlateTiles& tiles, const PlateSheetOptions& options);

}  // namespace ringrule
