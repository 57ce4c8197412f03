// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/remark.h"

#include <set>
#include <string>

#include <catch2/catch.hpp>

using namespace ringrule;

TEST_CASE("every remark has an id of its own that leads back to it, and a whole sentence") {
    std::set<std::string> ids;
    for (const Remark remark : allRemarks()) {
        const std::string id{remarkId(remark)};
        CAPTURE(id);
        CHECK(ids.insert(id).second);
        CHECK(remarkFromId(id) == remark);
        CHECK(id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string::npos);
        CHECK(remarkSentence(remark).back() == '.');
    }
    CHECK_FALSE(remarkFromId("not-a-remark").has_value());
}
