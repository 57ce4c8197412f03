// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace ringrule {

/// A calendar day; differences are `std::chrono::days`.
using Date = std::chrono::sys_days;

[[nodiscard]] std::string formatDate(Date date);                     ///< "YYYY-MM-DD" (ISO 8601)
[[nodiscard]] std::optional<Date> parseDate(std::string_view text);  ///< from the first ten characters of ISO 8601

}  // namespace ringrule
