// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "records/database.h"

namespace ringrule {

/// Writes a copy of the database, whole or not at all, to `backups/collection-DAY<ending>.sqlite`, then removes the
/// oldest backups beyond the number that is kept. Returns the file. Precondition: no transaction is open.
std::filesystem::path backUpDatabase(Database& database, const std::filesystem::path& folder,
                                     const std::string& ending = {});

/// Makes today's backup unless it is there, or the collection was made today. `knownDay` remembers that it is.
void backUpOnceADay(Database& database, const std::filesystem::path& folder, std::string& knownDay);

}  // namespace ringrule
