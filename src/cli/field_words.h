// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

namespace ringrule::cli {

/// "FIELD=VALUE" words as a map. Throws `Error(BadUse)` for a word without a sign of equality.
[[nodiscard]] std::map<std::string, std::string> fieldWords(const std::vector<std::string>& words);

}  // namespace ringrule::cli
