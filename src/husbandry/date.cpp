// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/husbandry/date.h"

#include <array>
#include <cstdio>

namespace ringrule {
namespace {

std::optional<int> digits(std::string_view text) {
    int number = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        number = 10 * number + (c - '0');
    }
    return number;
}

}  // namespace

std::string formatDate(Date date) {
    const std::chrono::year_month_day day{date};
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(day.year()),
                  static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
    return text.data();
}

std::optional<Date> parseDate(std::string_view text) {
    if (text.size() < 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    // What follows the day must be a time, or "2031-01-061" would pass as the sixth.
    if (text.size() > 10 && text[10] != 'T' && text[10] != ' ') return std::nullopt;
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok()) return std::nullopt;
    return Date{date};
}

}  // namespace ringrule
