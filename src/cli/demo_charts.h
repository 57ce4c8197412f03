// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>

#include "ringrule/judge/finding.h"

namespace ringrule::cli {

/// Writes a growth chart of length, depth ratio and girth ratio for each species; animals that were ever flagged stand
/// out. Throws `Error(NoSpace)`.
void writeDemoCharts(std::span<const AnimalHistory> histories, const std::filesystem::path& folder);

}  // namespace ringrule::cli
