// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

namespace ringrule {

/// Whether a folder is a collection.
[[nodiscard]] bool isCollection(const std::filesystem::path& folder);

/// The folder of photos that a keeper means by a path: of a camera card (its root or the folder DCIM that the DCF
/// standard puts there) the newest folder that holds photos; of a file the folder that it lies in; or else the path
/// itself.
[[nodiscard]] std::filesystem::path photoFolderIn(const std::filesystem::path& path);

}  // namespace ringrule
