// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <fstream>
#include <string>

namespace ringrule {

/// A new text file; a disk that is full is told as `Error(NoSpace)`.
class TextFile {
public:
    explicit TextFile(std::filesystem::path path);
    void write(const std::string& text);
    /// Must be called at the end: only then is everything known to be written.
    void close();

private:
    [[noreturn]] void fail() const;
    std::filesystem::path path_;
    std::ofstream out_;
};

}  // namespace ringrule
