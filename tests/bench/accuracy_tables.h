// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of docs/measuring-method.md.
#pragma once

#include <span>
#include <string>

#include "accuracy_row.h"

namespace bench {

/// Markdown: errors in the stated plane (large animals in %, small ones in px), coverage with depth and pitch drawn,
/// and what went wrong.
std::string tablesOf(std::span<const PhotoScore> stated, std::span<const PhotoScore> loose);

}  // namespace bench
