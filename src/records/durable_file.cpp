// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/durable_file.h"

#include <array>
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

/// Copies by hand: the library's own copying calls a full disk an input/output error.
void copyBytes(const fs::path& from, const fs::path& part, const fs::path& to) {
    const int in = ::open(from.c_str(), O_RDONLY | O_CLOEXEC);
    if (in < 0) fail(from, errno);
    const int out = ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
    int code = out < 0 ? errno : 0;
    std::array<char, 1 << 16> piece{};
    while (code == 0) {
        const ssize_t got = ::read(in, piece.data(), piece.size());
        if (got < 0) code = errno;
        if (got <= 0) break;
        for (ssize_t done = 0; done < got && code == 0;) {
            const ssize_t put = ::write(out, piece.data() + done, static_cast<std::size_t>(got - done));
            if (put < 0)
                code = errno;
            else
                done += put;
        }
    }
    ::close(in);
    if (out >= 0 && ::close(out) != 0 && code == 0) code = errno;
    if (code != 0) fail(to, code);
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
    copyBytes(from, part.path(), to);
    putInPlace(part.path(), to);
}

}  // namespace ringrule
