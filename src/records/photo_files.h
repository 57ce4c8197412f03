// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>

namespace ringrule {

/// SHA-256 of a file, lower-case hexadecimal. Throws `Error(BadPhoto)` when it cannot be read.
[[nodiscard]] std::string contentHashOf(const std::filesystem::path& file);

/// Puts a copy of `original` at `target`, whole or not at all: written beside it, flushed to the disk, then renamed.
/// `contentHash` is what the content must hash to. Throws `Error(NoSpace)`, `Error(BadStore)`, or `Error(BadPhoto)`
/// when the original cannot be read or is no longer what was hashed.
void copyOriginal(const std::filesystem::path& original, const std::filesystem::path& target,
                  const std::string& contentHash);

}  // namespace ringrule
