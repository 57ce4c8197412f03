// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/schema.h"

#include <array>
#include <cctype>
#include <string>

#include "records/schema_steps.h"

namespace ringrule {
namespace {

const std::array<Migration, 4>& migrations() {
    static const std::array<Migration, 4> kMigrations{Migration{1, schemaStep1()}, Migration{2, schemaStep2()},
                                                      Migration{3, schemaStep3()}, Migration{4, schemaStep4()}};
    return kMigrations;
}

/// A name or keyword, or a text in quotes, or else one character.
std::string_view nextWord(std::string_view text) {
    const auto inWord = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; };
    std::size_t end = 1;
    if (text[0] == '\'') {
        end = text.find('\'', 1) + 1;
    } else if (inWord(text[0])) {
        while (end < text.size() && inWord(text[end])) ++end;
    }
    return text.substr(0, end);
}

void writeVersion(Database& database, int version) {
    if (!database.onServer()) {
        database.run("PRAGMA application_id = " + std::to_string(kApplicationId));
        database.run("PRAGMA user_version = " + std::to_string(version));
        return;
    }
    database.run("DELETE FROM schema_version");
    database.run("INSERT INTO schema_version VALUES (" + std::to_string(version) + ")");
}

void take(Database& database, const Migration& step) {
    if (database.onServer() && step.to == 1) {
        database.run("CREATE SCHEMA ringrule");
        database.run("CREATE TABLE schema_version (version BIGINT NOT NULL)");
    }
    for (const std::string_view statement : step.statements)
        database.run(database.onServer() ? onPostgresql(statement) : std::string(statement));
    writeVersion(database, step.to);
}

}  // namespace

std::span<const Migration> schemaMigrations() {
    return migrations();
}

int currentSchemaVersion() {
    return migrations().back().to;
}

int schemaVersionOf(const Database& database) {
    if (!database.onServer()) return std::stoi("0" + database.textOf("PRAGMA user_version"));
    if (database.textOf("SELECT to_regclass('ringrule.schema_version')").empty()) return 0;
    return std::stoi("0" + database.textOf("SELECT max(version) FROM schema_version"));
}

void migrate(Database& database, std::span<const Migration> migrations) {
    for (const Migration& step : migrations) {
        database.begin();
        try {
            // Asked inside the transaction: another program may be taking the same step.
            if (step.to > schemaVersionOf(database)) take(database, step);
        } catch (...) {
            database.rollback();
            throw;
        }
        database.commit();
    }
}

std::string onPostgresql(std::string_view statement) {
    std::string sql;
    bool isLink = false;
    while (!statement.empty()) {
        const std::string_view word = nextWord(statement);
        statement.remove_prefix(word.size());
        const bool isName = std::isalpha(static_cast<unsigned char>(word[0])) != 0;
        if (word == "INTEGER") {
            sql += "BIGINT";
        } else if (word == "REAL") {
            sql += "DOUBLE PRECISION";
        } else if (word == "TEXT") {
            sql += "TEXT COLLATE \"C\"";
        } else if (word == "WITHOUT") {
            statement.remove_prefix(std::string_view(" ROWID").size());
        } else {
            sql += word;
        }
        if (isLink && isName) sql += " DEFERRABLE";
        if (isName) isLink = word == "REFERENCES";
    }
    return sql;
}

void checkLinksAtTheEnd(Database& database) {
    database.run(database.onServer() ? "SET CONSTRAINTS ALL DEFERRED" : "PRAGMA defer_foreign_keys = ON");
}

}  // namespace ringrule
