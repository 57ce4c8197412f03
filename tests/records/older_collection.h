// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include "../scratch_folder.h"
#include "records/database.h"

/// Makes the collection of `tests/records/data/version-N.sql` in `folder`, as version N of the schema left it.
inline void writeVersion(int version, const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder / "photos");
    ringrule::Database database(folder / "collection.sqlite", ringrule::Database::Mode::ReadWrite);
    const std::string name = "tests/records/data/version-" + std::to_string(version) + ".sql";
    std::string text = contentOf(std::filesystem::path(RINGRULE_SOURCE_DIR) / name);
    for (std::size_t end = 0; (end = text.find(";\n")) != std::string::npos; text.erase(0, end + 2))
        database.run(text.substr(0, end));
}

inline void writeVersion1(const std::filesystem::path& folder) {
    writeVersion(1, folder);
}
