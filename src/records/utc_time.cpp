// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/utc_time.h"

#include <array>
#include <chrono>
#include <cstdio>

#include "ringrule/husbandry/date.h"

namespace ringrule {

std::string nowUtc() {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const auto day = std::chrono::floor<std::chrono::days>(now);
    const std::chrono::hh_mm_ss time{now - day};
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "T%02d:%02d:%02dZ", static_cast<int>(time.hours().count()),
                  static_cast<int>(time.minutes().count()), static_cast<int>(time.seconds().count()));
    return formatDate(day) + text.data();
}

}  // namespace ringrule
