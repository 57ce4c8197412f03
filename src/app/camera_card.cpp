// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/camera_card.h"

#include <algorithm>
#include <optional>

#include "ringrule/error.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

bool holdsPhotos(const fs::path& folder) {
    try {
        return !photosOfFolder(folder).empty();
    } catch (const Error&) {
        return false;
    }
}

/// When a photo was last written into a folder.
fs::file_time_type newestIn(const fs::path& folder) {
    fs::file_time_type newest = fs::file_time_type::min();
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder, none))
        newest = std::max(newest, fs::last_write_time(entry.path(), none));
    return newest;
}

}  // namespace

bool isCollection(const fs::path& folder) {
    std::error_code none;
    return fs::exists(folder / "collection.sqlite", none) || fs::exists(folder / "collection.address", none);
}

fs::path photoFolderIn(const fs::path& path) {
    std::error_code none;
    if (fs::is_regular_file(path, none)) return path.parent_path();
    fs::path card = path;
    if (fs::is_directory(path / "DCIM", none)) card = path / "DCIM";
    if (card.filename() != "DCIM") return path;
    std::optional<fs::path> newest;
    for (const auto& entry : fs::directory_iterator(card, none)) {
        if (!entry.is_directory(none) || !holdsPhotos(entry.path())) continue;
        if (!newest || newestIn(entry.path()) > newestIn(*newest)) newest = entry.path();
    }
    return newest.value_or(path);
}

}  // namespace ringrule
