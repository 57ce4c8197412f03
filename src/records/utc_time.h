// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace ringrule {

[[nodiscard]] std::string nowUtc();  ///< "YYYY-MM-DDThh:mm:ssZ"

}  // namespace ringrule
