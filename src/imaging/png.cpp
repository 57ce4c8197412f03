// SPDX-License-Identifier: GPL-3.0-or-later
#include "imaging/png.h"

#include <cstddef>
#include <string_view>

namespace ringrule {
namespace {

std::size_t word(std::span<const unsigned char> bytes, std::size_t at) {
    return (std::size_t{bytes[at]} << 24U) | (std::size_t{bytes[at + 1]} << 16U) | (std::size_t{bytes[at + 2]} << 8U) |
           std::size_t{bytes[at + 3]};
}

}  // namespace

PngLayout readPngLayout(std::span<const unsigned char> bytes) {
    PngLayout layout;
    std::size_t at = 8;  // behind the signature
    while (at + 12 <= bytes.size()) {
        const std::size_t length = word(bytes, at);
        if (length > bytes.size() - at - 12) return layout;
        const std::string_view type(reinterpret_cast<const char*>(&bytes[at + 4]), 4);
        const auto body = bytes.subspan(at + 8, length);
        if (type == "IHDR" && length >= 8) {
            layout.widthPx = static_cast<std::int64_t>(word(body, 0));
            layout.heightPx = static_cast<std::int64_t>(word(body, 4));
        } else if (type == "eXIf") {
            layout.exif = body;
        } else if (type == "IEND") {
            layout.whole = true;
            return layout;
        }
        at += length + 12;
    }
    return layout;
}

}  // namespace ringrule
