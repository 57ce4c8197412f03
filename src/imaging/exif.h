// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace ringrule {

/// What a photo's EXIF block says. Unreadable or senseless entries are as if absent.
struct Exif {
    std::optional<std::string> takenAt;  ///< "YYYY-MM-DDTHH:MM:SS"
    std::string make;
    std::string model;
    std::optional<double> focalLengthMm;
    int orientation = 1;       ///< 1–8
    std::int64_t widthPx = 0;  ///< of a TIFF's first image, else 0
    std::int64_t heightPx = 0;
};

/// The entries of a TIFF structure: the payload of a JPEG's or PNG's EXIF block, or a whole TIFF file. Never throws for
/// bad content.
[[nodiscard]] Exif readExif(std::span<const unsigned char> tiff);

}  // namespace ringrule
