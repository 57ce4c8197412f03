// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "ringrule/measure/measurement.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// "132.4 ± 0.6": a number and the half-width of its 95 % interval, which has one significant figure (two when the
/// first is a 1) and sets the number's decimals; "cannot tell" when it is not known.
[[nodiscard]] std::string numberWithInterval(const Estimate& estimate, std::string_view unit = {});

/// A named measure for a table.
struct MeasureRow {
    std::string name;  ///< plain trade word, e.g. "Standard length"
    Estimate value;
    std::string unit;  ///< "mm", "%" or empty
};

/// The measures that the view and shape can give, main measure first. Those that could not be taken are there, not
/// known.
[[nodiscard]] std::vector<MeasureRow> measureRows(const Measurement& measurement);

}  // namespace ringrule
