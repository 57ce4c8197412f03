// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "ringrule/optics/box_file.h"

namespace ringrule {

/// Sizes of a plate's millimetre scales. They keep within a tenth of the plate's shorter side from the rim: there, and
/// only there, print is told from animals.
struct PlateRuler {
    double unitMm = 1.0;  ///< 1 on a plate whose shorter side is 120 mm

    explicit PlateRuler(double shorterSideMm) : unitMm(std::clamp(shorterSideMm / 120.0, 0.6, 1.25)) {}

    [[nodiscard]] double footMm() const { return 0.6 * unitMm; }    ///< ticks begin this far from the rim …
    [[nodiscard]] double ticksMm() const { return 4.2 * unitMm; }   ///< … and the longest end here
    [[nodiscard]] double stripMm() const { return 7.0 * unitMm; }   ///< ticks and numbers
    [[nodiscard]] double numberMm() const { return 2.7 * unitMm; }  ///< body of the numbers; digits are 0.73 of it high
    [[nodiscard]] double strokeMm() const { return 0.2 * unitMm; }
    /// Whole millimetres left free at both ends of a scale, where it would meet the other.
    [[nodiscard]] int endMm() const { return static_cast<int>(std::ceil(5.0 * unitMm)); }
    [[nodiscard]] double tickMm(int mm) const { return unitMm * (mm % 10 == 0 ? 3.6 : (mm % 5 == 0 ? 3.0 : 2.2)); }
};

/// The plate's two scales: along its lower edge, and down its left one.
enum class PlateScale { Lower, Left };

/// The tens of a scale that bear a number: all but those that would crowd a marker.
[[nodiscard]] std::vector<int> numbersOn(const PlateLayout& plate, PlateScale scale);

}  // namespace ringrule
