// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "records/database_errors.h"

using namespace ringrule;
using Catch::Contains;

TEST_CASE("why a server lets nobody in is told by its code, in whatever language it speaks") {
    const ServerAddress address = readServerAddress("postgresql://keepers@fish-server/house");
    const auto advice = [&](const std::string& code) { return connectAdvice({true, false, code}, address); };
    // Codes: PostgreSQL 15, appendix A.
    CHECK_THAT(advice("28P01"), Contains("password is wrong or missing"));
    CHECK_THAT(connectAdvice({true, true, ""}, address), Contains("password is wrong or missing"));
    CHECK_THAT(advice("28000"), Contains("not known there, or not allowed"));
    CHECK_THAT(advice("3D000"), Contains("createdb house"));
    CHECK_THAT(advice("42501"), Contains("may not open the database"));
    CHECK_THAT(advice("53300"), Contains("try again in a moment"));
    CHECK_THAT(advice("57P03"), Contains("try again in a moment"));
    CHECK_THAT(advice(""), Contains("cannot be reached"));
}
