// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "../scratch_folder.h"
#include "records/database.h"

/// Makes the collection of `tests/records/data/version-1.sql` in `folder`, as version 1 left it.
inline void writeVersion1(const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder / "photos");
    ringrule::Database database(folder / "collection.sqlite", ringrule::Database::Mode::ReadWrite);
    std::string text = contentOf(std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/records/data/version-1.sql");
    for (std::size_t end = 0; (end = text.find(";\n")) != std::string::npos; text.erase(0, end + 2))
        database.run(text.substr(0, end));
}
