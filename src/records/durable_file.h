// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace ringrule {

/// Puts `from` in the place of `to` so that a power cut leaves the one or the other: flushed, renamed, folder flushed.
/// Throws `Error(NoSpace)` or `Error(BadStore)`.
void putInPlace(const std::filesystem::path& from, const std::filesystem::path& to);

/// Copies a file whole, or throws `Error(NoSpace)` or `Error(BadStore)` and leaves no part of it.
void copyWhole(const std::filesystem::path& from, const std::filesystem::path& to);

/// A file that is removed when this goes, unless it was put in its place.
class UnfinishedFile {
public:
    explicit UnfinishedFile(std::filesystem::path path) : path_(std::move(path)) { remove(); }
    ~UnfinishedFile() { remove(); }
    UnfinishedFile(const UnfinishedFile&) = delete;
    UnfinishedFile& operator=(const UnfinishedFile&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    void remove() const noexcept {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    std::filesystem::path path_;
};

}  // namespace ringrule
