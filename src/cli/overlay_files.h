// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>

#include "ringrule/workflow/measure_photo.h"

namespace ringrule::cli {

/// Writes overlays into a folder, made when the first one comes; two photos of the same name get files of their own.
class OverlayFiles {
public:
    explicit OverlayFiles(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// Draws the animals of a reading over its photo; nothing when it has none. `labels` name animals by card.
    void write(const PhotoReading& reading, const std::map<int, std::string>& labels = {});

private:
    [[nodiscard]] std::filesystem::path freeName(const std::filesystem::path& photo);

    std::filesystem::path folder_;
    std::set<std::filesystem::path> taken_;
};

/// Makes a folder for results. Throws `Error(BadUse)` when it cannot.
void makeResultFolder(const std::filesystem::path& folder);

}  // namespace ringrule::cli
