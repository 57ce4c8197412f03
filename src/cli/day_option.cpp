// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/day_option.h"

#include "ringrule/error.h"

namespace ringrule::cli {

std::optional<Date> dayOption(const char* option, const std::string& text) {
    if (text.empty()) return std::nullopt;
    const auto day = parseDate(text);
    if (day && text.size() == 10) return day;
    throw Error(ErrorKind::BadUse, std::string(option) + " needs a day such as 2031-01-06, not \"" + text + "\"");
}

}  // namespace ringrule::cli
