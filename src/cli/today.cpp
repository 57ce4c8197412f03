// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/today.h"

#include <array>
#include <ctime>

namespace ringrule::cli {

std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    std::array<char, 16> text{};
    return {text.data(), std::strftime(text.data(), text.size(), "%Y-%m-%d", &local)};
}

}  // namespace ringrule::cli
