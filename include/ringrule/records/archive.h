// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>

#include "ringrule/records/store.h"

namespace ringrule {

/// Writes a whole collection (database, originals, box files) as one ZIP file that any machine opens, with a list of
/// every file's SHA-256. Whole or not at all; the collection may be in use. Throws `Error(NoSpace)`, `Error(BadStore)`
/// (also when an original is missing or altered), `Error(Stopped)` when progress says stop.
void writeArchive(const Store& store, const std::filesystem::path& file,
                  const std::function<bool(double)>& progress = {});

/// Makes a collection in `folder` (which must not be there, or be empty) from an archive. Every file is compared with
/// its hash first; on any doubt nothing is left behind. Throws `Error(BadData)`, `Error(BadStore)`, `Error(NoSpace)`.
void openArchive(const std::filesystem::path& file, const std::filesystem::path& folder,
                 const std::function<bool(double)>& progress = {});

/// The same for a collection that several workstations share: its database goes into the empty one at `address`, all
/// else into `folder` (see `Store::createShared`). This is how a collection of one machine becomes a shared one.
void openArchiveShared(const std::filesystem::path& file, const std::string& address,
                       const std::filesystem::path& folder, const std::function<bool(double)>& progress = {});

}  // namespace ringrule
