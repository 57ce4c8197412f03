// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

#include <nlohmann/json.hpp>

// The demo photos as the tests use them.
namespace samples {

inline const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

inline std::string photo(const std::string& name) {
    return (kSource / "sample_images" / name).string();
}
inline std::string box() {
    return (kSource / "calibration/bench-box.json").string();
}

/// The truth of a photo of the session `day`.
[[nodiscard]] nlohmann::json truth(const std::string& day, const std::string& stem);

/// Writes copies of a sample photo with something wrong, for photos that a camera would not give on order.
void writeBlank(const std::filesystem::path& file);
/// Markers number `from` and on, counted from left to right and top to bottom, are painted over.
void writeWithoutMarkers(const std::filesystem::path& photo, const std::filesystem::path& file, std::size_t from);
void writeTruncated(const std::filesystem::path& photo, const std::filesystem::path& file);

}  // namespace samples
