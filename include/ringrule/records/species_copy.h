// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "ringrule/records/store.h"

namespace ringrule {

/// Makes `text` the collection's own `species.json`, logged as a change; one that was there before is kept beside the
/// backups. Returns where that is, or nothing. Whole or not at all. Throws `Error(NoSpace)`, `Error(BadStore)`. Whoever
/// calls it has checked the text.
std::filesystem::path keepSpeciesText(Store& store, const std::string& text, const std::string& keeper);

}  // namespace ringrule
