// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/photo_files.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <functional>
#include <span>

#include <fcntl.h>
#include <unistd.h>

#include <QCryptographicHash>

#include "ringrule/error.h"

namespace ringrule {
namespace {

/// An open file, closed when it goes.
class OpenFile {
public:
    OpenFile(const std::filesystem::path& path, int flags, mode_t mode = 0) : fd_(::open(path.c_str(), flags, mode)) {}
    ~OpenFile() {
        if (fd_ >= 0) ::close(fd_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    [[nodiscard]] int fd() const noexcept { return fd_; }
    [[nodiscard]] bool good() const noexcept { return fd_ >= 0; }

private:
    int fd_;
};

/// Removes a half-written copy unless it was kept.
class Unfinished {
public:
    explicit Unfinished(std::filesystem::path path) : path_(std::move(path)) {}
    ~Unfinished() {
        if (!path_.empty()) ::unlink(path_.c_str());
    }
    Unfinished(const Unfinished&) = delete;
    Unfinished& operator=(const Unfinished&) = delete;
    void keep() { path_.clear(); }

private:
    std::filesystem::path path_;
};

[[noreturn]] void failWriting(const std::filesystem::path& path) {
    const int code = errno;
    if (code == ENOSPC || code == EDQUOT) {
        throw Error(ErrorKind::NoSpace, "the disk is full: nothing was changed; make room and try again",
                    path.string());
    }
    throw Error(ErrorKind::BadStore, std::string("the photo cannot be kept here (") + std::strerror(code) + ")",
                path.string());
}

/// Hands the file's content on in pieces; what comes back is its SHA-256.
std::string readThrough(const std::filesystem::path& path, const std::function<void(std::span<const char>)>& onPiece) {
    const OpenFile file(path, O_RDONLY | O_CLOEXEC);
    if (!file.good()) throw Error(ErrorKind::BadPhoto, "cannot be opened", path.string());
    QCryptographicHash hash(QCryptographicHash::Sha256);
    std::array<char, 1 << 16> piece;
    for (;;) {
        const ssize_t got = ::read(file.fd(), piece.data(), piece.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) throw Error(ErrorKind::BadPhoto, "cannot be read", path.string());
        if (got == 0) break;
        hash.addData(QByteArrayView(piece.data(), got));
        if (onPiece) onPiece(std::span(piece.data(), static_cast<std::size_t>(got)));
    }
    return hash.result().toHex().toStdString();
}

void writeAll(int fd, std::span<const char> piece, const std::filesystem::path& path) {
    while (!piece.empty()) {
        const ssize_t put = ::write(fd, piece.data(), piece.size());
        if (put < 0 && errno == EINTR) continue;
        if (put < 0) failWriting(path);
        piece = piece.subspan(static_cast<std::size_t>(put));
    }
}

}  // namespace

std::string contentHashOf(const std::filesystem::path& file) {
    return readThrough(file, {});
}

void copyOriginal(const std::filesystem::path& original, const std::filesystem::path& target,
                  const std::string& contentHash) {
    const std::filesystem::path part =
        target.parent_path() / ("." + target.filename().string() + ".part-" + std::to_string(::getpid()));
    const OpenFile out(part, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0444);
    if (!out.good()) failWriting(part);
    Unfinished unfinished(part);
    const std::string hash =
        readThrough(original, [&](std::span<const char> piece) { writeAll(out.fd(), piece, part); });
    if (hash != contentHash) {
        throw Error(ErrorKind::BadPhoto, "changed while it was being added; try again", original.string());
    }
    if (::fsync(out.fd()) != 0) failWriting(part);
    if (::rename(part.c_str(), target.c_str()) != 0) failWriting(target);
    unfinished.keep();
    // The rename itself must survive a power cut, or a row could name a photo that is not there.
    const OpenFile folder(target.parent_path(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder.good()) ::fsync(folder.fd());
}

}  // namespace ringrule
