// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>

namespace ringrule {

/// What a PNG holds before its pixels are decoded.
struct PngLayout {
    bool whole = false;  ///< the closing chunk is there
    std::int64_t widthPx = 0;
    std::int64_t heightPx = 0;
    std::span<const unsigned char> exif;  ///< the TIFF structure of an eXIf chunk, or empty
};

/// The layout of PNG bytes, chunk by chunk (ISO/IEC 15948, clause 5).
[[nodiscard]] PngLayout readPngLayout(std::span<const unsigned char> bytes);

}  // namespace ringrule
