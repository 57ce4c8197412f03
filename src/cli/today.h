// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace ringrule::cli {

/// The day by the machine's clock, where it stands: "YYYY-MM-DD".
[[nodiscard]] std::string today();

}  // namespace ringrule::cli
