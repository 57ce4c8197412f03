// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "ringrule/husbandry/date.h"

namespace ringrule::cli {

/// The day that an option such as "--on" names, or nothing when it was not given. Throws `Error(BadUse)`.
[[nodiscard]] std::optional<Date> dayOption(const char* option, const std::string& text);

}  // namespace ringrule::cli
