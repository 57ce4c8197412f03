// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/calendar_day.h"

#include <charconv>
#include <chrono>

namespace ringrule {
namespace {

std::optional<int> wholeIn(std::string_view digits) {
    int value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc() || end != digits.data() + digits.size() || value < 0) return std::nullopt;
    return value;
}

}  // namespace

std::optional<int> calendarDay(std::string_view text) {
    if (text.size() < 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    if (text.size() > 10 && text[10] != 'T' && text[10] != ' ') return std::nullopt;
    const auto year = wholeIn(text.substr(0, 4)), month = wholeIn(text.substr(5, 2)), day = wholeIn(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok()) return std::nullopt;
    return static_cast<int>(std::chrono::sys_days(date).time_since_epoch().count());
}

}  // namespace ringrule
