// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/text_file.h"

#include <cerrno>
#include <cstring>

#include "ringrule/error.h"

namespace ringrule {

TextFile::TextFile(std::filesystem::path path) : path_(std::move(path)), out_(path_, std::ios::binary) {
    if (!out_) fail();
}

void TextFile::write(const std::string& text) {
    if (!out_.write(text.data(), static_cast<std::streamsize>(text.size()))) fail();
}

void TextFile::close() {
    out_.close();
    if (!out_) fail();
}

void TextFile::fail() const {
    const int code = errno;
    if (code == ENOSPC || code == EDQUOT)
        throw Error(ErrorKind::NoSpace, "the disk is full: nothing was made; make room and try again", path_.string());
    throw Error(ErrorKind::BadStore, std::string("cannot be written (") + std::strerror(code) + ")", path_.string());
}

}  // namespace ringrule
