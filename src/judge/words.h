// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "ringrule/husbandry/date.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// "12 %" or, under ten, "4.5 %".
[[nodiscard]] std::string percentText(double percent);
/// "12 % (8 to 16 %)": the size of a deficit or excess with its 95 % interval, signs turned so that it reads as a size.
[[nodiscard]] std::string sizeWithInterval(const Estimate& percent);
/// "0.21 mm/day (0.15 to 0.27)".
[[nodiscard]] std::string rateText(const Estimate& mmPerDay);
/// "P1, P2 and P3".
[[nodiscard]] std::string listText(std::span<const std::string> codes);
/// "6 tankmates (P1, P2, …)".
[[nodiscard]] std::string tankmatesText(std::span<const std::string> codes);
/// The number with as many decimals, trailing ".0" kept.
[[nodiscard]] std::string numberText(double value, int decimals);

}  // namespace ringrule
