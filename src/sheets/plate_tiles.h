// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "ringrule/optics/box_file.h"
#include "ringrule/sheets/paper.h"

namespace ringrule {

/// What surrounds the plate on a sheet.
namespace sheet_frame {
inline constexpr double kMarginMm = 10.0;  ///< printers leave 4 to 9 mm blank
inline constexpr double kHeaderMm = 9.0;
inline constexpr double kFooterMm = 30.0;     ///< bar across and what to do
inline constexpr double kBarColumnMm = 16.0;  ///< bar down, right of the plate
inline constexpr double kTabMm = 8.0;         ///< strip that is glued under the neighbouring sheet
}  // namespace sheet_frame

/// Where a plate is cut to fit on sheets: cut lines from edge to edge, the plate's own edges included. Between two cuts
/// lies one sheet; every sheet but the first of a row or column has a tab before its first cut.
struct PlateTiles {
    bool landscape = false;
    std::vector<double> cutsXMm;
    std::vector<double> cutsYMm;

    [[nodiscard]] int columns() const { return static_cast<int>(cutsXMm.size()) - 1; }
    [[nodiscard]] int rows() const { return static_cast<int>(cutsYMm.size()) - 1; }
    [[nodiscard]] int sheets() const { return columns() * rows(); }
};

/// The fewest sheets, upright or turned. No cut comes within 3 mm of a marker's quiet zone, nor on a tick or a number
/// of a scale. Throws `Error(BadUse)` when markers leave no room for a cut.
[[nodiscard]] PlateTiles tilesOf(const PlateLayout& plate, Paper paper);

}  // namespace ringrule
