// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/schema.h"

#include <array>
#include <string>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

const std::array<Migration, 2>& migrations() {
    static const std::array<Migration, 2> kMigrations{Migration{1, schemaStep1()}, Migration{2, schemaStep2()}};
    return kMigrations;
}

}  // namespace

std::span<const Migration> schemaMigrations() {
    return migrations();
}

int currentSchemaVersion() {
    return migrations().back().to;
}

int schemaVersionOf(const Database& database) {
    return std::stoi("0" + database.textOf("PRAGMA user_version"));
}

void migrate(Database& database, std::span<const Migration> migrations) {
    for (const Migration& step : migrations) {
        if (step.to <= schemaVersionOf(database)) continue;
        database.begin();
        try {
            for (const std::string_view statement : step.statements) database.run(std::string(statement));
            database.run("PRAGMA application_id = " + std::to_string(kApplicationId));
            database.run("PRAGMA user_version = " + std::to_string(step.to));
        } catch (...) {
            database.rollback();
            throw;
        }
        database.commit();
    }
}

}  // namespace ringrule
