// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>

#include "records/database.h"

namespace ringrule {

/// Where the parts of a collection are. Photos, box files and backups are in the folder; the database is there too, or
/// on a server, when several workstations share the collection.
struct CollectionPlace {
    std::filesystem::path folder;
    std::optional<ServerAddress> server;
};

/// The file in a shared collection's folder that holds the address of its database.
inline constexpr const char* kAddressFile = "collection.address";
/// The setting in which a shared collection's database keeps where its folder is.
inline constexpr const char* kFolderSetting = "shared_folder";

/// The parts of the collection at `where`: a folder, or the address of a database. Throws `Error(BadStore)` when there
/// is none, `Error(BadUse)` for a bad address.
[[nodiscard]] CollectionPlace placeOf(const std::filesystem::path& where);

/// The same of a shared collection's folder, without a look at the database or whether one is in the folder too.
[[nodiscard]] CollectionPlace addressedPlace(const std::filesystem::path& folder);

/// A connection to the collection's database.
[[nodiscard]] Database databaseAt(const CollectionPlace& place, Database::Mode mode = Database::Mode::ReadWrite);

/// Throws `Error(BadStore)` when a server's database holds no collection, or one that a newer Ringrule wrote.
void checkServer(const Database& database, const ServerAddress& address);

/// Writes the file by which a folder is a shared collection. Throws `Error(NoSpace)`, `Error(BadStore)`.
void writeAddressFile(const std::filesystem::path& folder, const ServerAddress& address);

}  // namespace ringrule
