// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

#include "records/database.h"

namespace ringrule {

/// Marks a SQLite file as a Ringrule collection (`PRAGMA application_id`, "RRUL").
inline constexpr int kApplicationId = 0x5252554c;

/// One step of the schema: the statements that lead from version `to − 1` to `to`. A published step never changes.
struct Migration {
    int to = 0;
    std::span<const std::string_view> statements;
};

/// All steps in order; the last one's `to` is the version this program reads and writes.
[[nodiscard]] std::span<const Migration> schemaMigrations();

[[nodiscard]] int currentSchemaVersion();

/// The version of a database (`PRAGMA user_version`); 0 for an empty one.
[[nodiscard]] int schemaVersionOf(const Database& database);

/// Takes a database through the steps it lacks, each in one transaction together with its version number, so that a
/// program killed on the way leaves a whole older or newer version.
void migrate(Database& database, std::span<const Migration> migrations = schemaMigrations());

}  // namespace ringrule
