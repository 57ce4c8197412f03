// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <string>
#include <utility>

namespace ringrule {

/// What went wrong in the world outside the program. One table in `src/cli/exit_status.h` maps each kind to an exit status.
enum class ErrorKind {
    BadUse,    ///< a wrong option or argument
    BadPhoto,  ///< a photo that cannot be read
    BadBox,    ///< a box file that cannot be used
    BadStore,  ///< a collection that cannot be opened, read or written
    BadData,   ///< any other input file that cannot be used
    NoSpace,   ///< nothing more can be written to a disk
    Stopped,   ///< the user stopped a run
};

/// The one exception type of Ringrule: the world's failures. `what()` is one line that says what is wrong and what to do
/// about it; `path()` is the file concerned, or empty. "This photo cannot be measured" is not an error: see `outcome.h`.
class Error : public std::runtime_error {
public:
    Error(ErrorKind kind, const std::string& message, std::string path = {})
        : std::runtime_error(path.empty() ? message : path + ": " + message), kind_(kind), path_(std::move(path)) {}

    [[nodiscard]] ErrorKind kind() const noexcept { return kind_; }
    [[nodiscard]] const std::string& path() const noexcept { return path_; }

private:
    ErrorKind kind_;
    std::string path_;
};

}  // namespace ringrule
