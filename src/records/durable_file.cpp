// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/durable_file.h"

#include <cerrno>
#include <cstring>
#include <string>

#include <fcntl.h>
#include <unistd.h>

#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, int code) {
    if (code == ENOSPC || code == EDQUOT) {
        throw Error(ErrorKind::NoSpace, "the disk is full: nothing was changed; make room and try again",
                    path.string());
    }
    throw Error(ErrorKind::BadStore, std::string("cannot be written (") + std::strerror(code) + ")", path.string());
}

void flush(const fs::path& path, int flags) {
    const int fd = ::open(path.c_str(), flags | O_CLOEXEC);
    if (fd < 0) fail(path, errno);
    const int code = ::fsync(fd) == 0 ? 0 : errno;
    ::close(fd);
    // Some file systems cannot flush a folder; they have no other way to be asked either.
    if (code != 0 && code != EINVAL) fail(path, code);
}

}  // namespace

void putInPlace(const fs::path& from, const fs::path& to) {
    flush(from, O_RDONLY);
    if (::rename(from.c_str(), to.c_str()) != 0) fail(to, errno);
    flush(to.parent_path().empty() ? fs::path(".") : to.parent_path(), O_RDONLY | O_DIRECTORY);
}

void copyWhole(const fs::path& from, const fs::path& to) {
    const UnfinishedFile part(to.parent_path() /
                              ("." + to.filename().string() + ".part-" + std::to_string(::getpid())));
    std::error_code error;
    fs::copy_file(from, part.path(), error);
    if (error) fail(to, error.value());
    putInPlace(part.path(), to);
}

}  // namespace ringrule
