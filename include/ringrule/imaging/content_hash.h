// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>

namespace ringrule {

/// SHA-256 (FIPS 180-4) of the bytes as 64 lower-case hexadecimal digits.
[[nodiscard]] std::string sha256Hex(std::span<const unsigned char> bytes);

}  // namespace ringrule
