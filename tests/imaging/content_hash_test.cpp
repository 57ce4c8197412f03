// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "ringrule/imaging/content_hash.h"

using namespace ringrule;

namespace {

std::string hashOf(const std::string& text) {
    return sha256Hex(std::vector<unsigned char>(text.begin(), text.end()));
}

}  // namespace

TEST_CASE("SHA-256 gives the standard's examples", "[hash]") {
    // FIPS 180-2, appendix B.1–B.3, and the well-known digest of nothing; from memory.
    CHECK(hashOf("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(hashOf("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(hashOf(std::string(1'000'000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
    CHECK(hashOf("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}
