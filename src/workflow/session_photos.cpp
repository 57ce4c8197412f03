// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cctype>

#include "ringrule/workflow/measure_session.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

bool looksLikePhoto(const fs::path& file) {
    std::string ending = file.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const bool hidden = file.filename().string().starts_with('.');
    return !hidden && (ending == ".jpg" || ending == ".jpeg" || ending == ".png");
}

}  // namespace

View viewOfFolder(const fs::path& photo) {
    return viewFromName(photo.parent_path().filename().string()).value_or(View::Side);
}

std::vector<PhotoTask> photosOfFolder(const fs::path& folder) {
    std::error_code error;
    std::vector<PhotoTask> tasks;
    for (auto entry = fs::recursive_directory_iterator(folder, error);
         !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
        const bool emptyBox = entry->path().parent_path() == folder / "empty";
        if (entry->is_regular_file() && looksLikePhoto(entry->path()) && !emptyBox) {
            tasks.push_back({entry->path(), viewOfFolder(entry->path())});
        }
    }
    if (error) throw Error(ErrorKind::BadUse, "the folder cannot be read (" + error.message() + ")", folder.string());
    if (tasks.empty()) throw Error(ErrorKind::BadUse, "there is no photo (.jpg, .png) in this folder", folder.string());
    std::sort(tasks.begin(), tasks.end(), [](const PhotoTask& a, const PhotoTask& b) { return a.path < b.path; });
    return tasks;
}

}  // namespace ringrule
