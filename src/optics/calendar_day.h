// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

namespace ringrule {

/// Days since 1970-01-01 of a text that begins with "YYYY-MM-DD"; nothing when that is no day of the calendar.
[[nodiscard]] std::optional<int> calendarDay(std::string_view text);

}  // namespace ringrule
