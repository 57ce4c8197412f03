// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "records/database.h"

namespace ringrule {

/// Marks a SQLite file as a Ringrule collection (`PRAGMA application_id`, "RRUL").
inline constexpr int kApplicationId = 0x5252554c;

/// One step of the schema: the statements that lead from version `to − 1` to `to`, as SQLite reads them; a server gets
/// them as `onPostgresql` says. A published step never changes.
struct Migration {
    int to = 0;
    std::span<const std::string_view> statements;
};

/// All steps in order; the last one's `to` is the version this program reads and writes.
[[nodiscard]] std::span<const Migration> schemaMigrations();

[[nodiscard]] int currentSchemaVersion();

/// The version of a database: `PRAGMA user_version`, or the one row of `ringrule.schema_version` on a server; 0 for an
/// empty one.
[[nodiscard]] int schemaVersionOf(const Database& database);

/// Takes a database through the steps it lacks, each in one transaction together with its version number, so that a
/// program killed on the way leaves a whole older or newer version. Two programs may do so at the same time.
void migrate(Database& database, std::span<const Migration> migrations = schemaMigrations());

/// The same statement for PostgreSQL: types by its names, texts in order of their bytes as SQLite sorts them, links
/// that may be checked at the end of a transaction.
[[nodiscard]] std::string onPostgresql(std::string_view statement);

/// Links of the rows that are written from here on are checked when the transaction ends.
void checkLinksAtTheEnd(Database& database);

}  // namespace ringrule
