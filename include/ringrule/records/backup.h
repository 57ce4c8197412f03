// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/records/store.h"

namespace ringrule {

/// Backups of a collection's database lie in its folder `backups/`, named by their day: SQLite files, also those of a
/// shared collection, so that any machine can open them. Photos need none: they are
/// never rewritten or removed, so a backup and the photos folder are the collection of that day. One is made before the
/// first change of each day, and before an older collection is brought up to date. How many are kept is the setting
/// `backups_kept`; 0 switches the daily ones off.
inline constexpr int kBackupsKept = 14;

/// Makes a backup now, whole or not at all; returns its file. Throws `Error(NoSpace)`, `Error(BadStore)`.
std::filesystem::path backUp(const Store& store);

/// The backups of a collection, oldest first. The collection itself may be damaged.
[[nodiscard]] std::vector<std::filesystem::path> backupsOf(const std::filesystem::path& where);

struct Restored {
    std::filesystem::path backup;            ///< what the collection is now
    std::filesystem::path replaced;          ///< what it was before, kept in `backups/`; empty when there was nothing
    std::vector<std::string> missingPhotos;  ///< names of photos that the backup lists and the folder lacks
};

/// Puts a backup (the newest unless one is named: a file, or its name in `backups/`) in the collection's place. The
/// backup is checked first; what it replaces is kept. Throws `Error(BadStore)`, also when another program has the
/// collection open.
Restored restoreBackup(const std::filesystem::path& where, const std::string& backup = {});

}  // namespace ringrule
