// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace ringrule {

class MainWindow;

/// Saves a picture of every page of the window's collection as PNG into `folder`, once nothing runs in the background.
/// Returns false when one could not be written.
[[nodiscard]] bool savePictures(MainWindow& window, const std::filesystem::path& folder);

/// Runs the event loop until nothing runs in the background.
void waitUntilIdle(MainWindow& window);

}  // namespace ringrule
