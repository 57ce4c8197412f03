// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

namespace ringrule {

enum class Thoroughness {
    Whole,   ///< every page and every link: a second for some hundred megabytes
    Opening  ///< the same for a file up to 24 MB; of a larger one its length and the tables that keepers write
};

/// Looks at a database without changing a byte of it. Throws `Error(BadStore)` when it is no collection, a newer one,
/// or damaged.
void checkDatabaseFile(const std::filesystem::path& file, Thoroughness thoroughness);

/// Says that a newer Ringrule wrote the collection at `place`.
[[noreturn]] void failNewer(int version, const std::string& place);

/// The file of a collection's database.
[[nodiscard]] std::filesystem::path databaseOf(const std::filesystem::path& folder);

/// Throws `Error(BadStore)` when `folder` is not there or holds no collection.
void mustBeCollection(const std::filesystem::path& folder);

}  // namespace ringrule
