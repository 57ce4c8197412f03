// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>

namespace ringrule {

/// The invented demo house: its house file, whose photos lie beside it, and the folder of its boxes.
struct DemoFiles {
    std::filesystem::path house;
    std::filesystem::path calibration;
};

/// The demo's files: beside or above the program, in its share folder, or in the current folder.
[[nodiscard]] std::optional<DemoFiles> findDemoFiles();

}  // namespace ringrule
