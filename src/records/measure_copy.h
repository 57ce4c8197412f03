// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

#include "records/database.h"

namespace ringrule {

/// Adds, in the place of the correction `measure`, a copy of the measure that it replaced; returns its number. Throws
/// `Error(BadData)` when the correction was itself corrected since.
std::int64_t addCopyOfReplaced(const Database& database, std::int64_t measure, const std::string& keeper);

}  // namespace ringrule
