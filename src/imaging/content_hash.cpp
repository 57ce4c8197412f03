// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/content_hash.h"

#include <array>
#include <cstddef>
#include <stdexcept>

#include <openssl/evp.h>

namespace ringrule {

std::string sha256Hex(std::span<const unsigned char> bytes) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned int length = 0;
    if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1)
        throw std::runtime_error("libcrypto offers no SHA-256");
    constexpr char kDigits[] = "0123456789abcdef";
    std::string hex;
    hex.reserve(2 * std::size_t{length});
    for (std::size_t i = 0; i < length; ++i) {
        hex += kDigits[digest[i] >> 4U];
        hex += kDigits[digest[i] & 15U];
    }
    return hex;
}

}  // namespace ringrule
