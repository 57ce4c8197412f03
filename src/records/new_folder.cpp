// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/new_folder.h"

#include <string>

#include <unistd.h>

#include "ringrule/error.h"

namespace ringrule {

namespace fs = std::filesystem;

NewFolder::NewFolder(fs::path place) : place_(std::move(place)) {
    if (!place_.has_filename()) place_ = place_.parent_path();  // a slash at the end
    std::error_code error;
    if (fs::exists(place_, error) && !fs::is_empty(place_, error))
        throw Error(ErrorKind::BadUse, "this place is taken; name a folder that is not there yet", place_.string());
    path_ = place_.parent_path() / ("." + place_.filename().string() + ".part-" + std::to_string(::getpid()));
    fs::remove_all(path_, error);
    fs::create_directories(path_, error);
    if (error) throw Error(ErrorKind::BadStore, "the folder cannot be made (" + error.message() + ")", place_.string());
}

NewFolder::~NewFolder() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
}

void NewFolder::keep() {
    std::error_code error;
    fs::remove(place_, error);  // an empty one
    fs::rename(path_, place_, error);
    if (error) throw Error(ErrorKind::BadStore, "the folder cannot be made (" + error.message() + ")", place_.string());
    path_.clear();
}

}  // namespace ringrule
