// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>

#include "records/database.h"

namespace ringrule {

/// Writes what a database holds as a SQLite file that any machine opens, in the version that the database has.
/// Precondition: no transaction is open. `file` must not be there.
void copyToFile(Database& database, const std::filesystem::path& file);

/// Puts what a SQLite file of the current version holds in the place of all that a server's database of that version
/// holds, inside the caller's transaction.
void copyFromFile(const std::filesystem::path& file, Database& server);

/// Makes an empty database on a server a collection whose folder is `folder`: `fill` brings in what it holds, all of it
/// or nothing. Throws `Error(BadStore)` when a collection is already there or its texts are not kept as UTF-8.
void fillServer(Database& server, const ServerAddress& address, const std::filesystem::path& folder,
                const std::function<void()>& fill);

/// Keeps in the database where its folder is.
void keepFolder(Database& server, const std::filesystem::path& folder);

}  // namespace ringrule
