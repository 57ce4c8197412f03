// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace ringrule {

/// A folder in the making: filled under another name beside its place, then put there by `keep`, or gone without a
/// trace. Refuses, `Error(BadUse)`, a place that is not empty.
class NewFolder {
public:
    explicit NewFolder(std::filesystem::path place);
    ~NewFolder();
    NewFolder(const NewFolder&) = delete;
    NewFolder& operator=(const NewFolder&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    void keep();

private:
    std::filesystem::path place_;
    std::filesystem::path path_;
};

}  // namespace ringrule
