// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/server_copy.h"

#include <string>
#include <vector>

#include "records/collection_place.h"
#include "records/schema.h"
#include "records/statement.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// The first column of every row.
std::vector<std::string> textsOf(const Database& database, const std::string& sql) {
    Statement rows(database, sql);
    rows.run();
    std::vector<std::string> texts;
    while (rows.next()) texts.push_back(rows.text());
    return texts;
}

/// The tables of a SQLite database; a server has the same.
std::vector<std::string> tablesOf(const Database& file) {
    return textsOf(file,
                   "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name");
}

void copyRows(const Database& from, Database& to, const std::string& table, const std::vector<std::string>& columns) {
    std::string names;
    std::string marks;
    for (const std::string& column : columns) {
        names += (names.empty() ? "" : ", ") + column;
        marks += marks.empty() ? "?" : ", ?";
    }
    Statement rows(from, "SELECT " + names + " FROM " + table, Statement::Fetch::RowByRow);
    Statement writer(to, "INSERT INTO " + table + " (" + names + ") VALUES (" + marks + ")");
    rows.run();
    while (rows.next()) {
        for (std::size_t i = 0; i < columns.size(); ++i) writer.bind(rows.value());
        writer.run();
    }
}

/// Every row of every table; `file` is the one of the two whose columns can be asked for.
void copyTables(const Database& from, Database& to, const Database& file) {
    for (const std::string& table : tablesOf(file))
        copyRows(from, to, table, textsOf(file, "SELECT name FROM pragma_table_info('" + table + "')"));
}

std::string quoted(const std::string& text) {
    std::string sql = "'";
    for (const char c : text) sql += c == '\'' ? "''" : std::string(1, c);
    return sql + "'";
}

void copyServerToFile(Database& server, const fs::path& path) {
    Database file(path, Database::Mode::ReadWrite);
    // Whoever asked puts the file in its place only when it is whole and on the disk.
    file.run("PRAGMA journal_mode = MEMORY");
    file.run("PRAGMA synchronous = OFF");
    const auto steps = schemaMigrations();
    migrate(file, steps.first(static_cast<std::size_t>(schemaVersionOf(server))));
    file.begin();
    try {
        checkLinksAtTheEnd(file);
        copyTables(server, file, file);
        file.run(std::string("DELETE FROM meta WHERE key = '") + kFolderSetting + "'");
    } catch (...) {
        file.rollback();
        throw;
    }
    file.commit();
}

}  // namespace

void copyToFile(Database& database, const fs::path& file) {
    if (!database.onServer()) {
        database.run("VACUUM INTO " + quoted(file.string()));
        return;
    }
    database.beginReading();
    try {
        copyServerToFile(database, file);
    } catch (...) {
        database.endReading();
        throw;
    }
    database.endReading();
}

void copyFromFile(const fs::path& path, Database& server) {
    const Database file(path, Database::Mode::ReadOnly);
    checkLinksAtTheEnd(server);
    std::string all;
    for (const std::string& table : tablesOf(file)) all += (all.empty() ? "" : ", ") + table;
    server.run("TRUNCATE " + all);
    copyTables(file, server, file);
    server.run("ANALYZE");  // the server plans its reading by what it counted
}

void keepFolder(Database& server, const fs::path& folder) {
    Statement(server,
              "INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value")
        .bind(std::string(kFolderSetting))
        .bind(fs::absolute(folder).lexically_normal().string())
        .run();
}

void fillServer(Database& server, const ServerAddress& address, const fs::path& folder,
                const std::function<void()>& fill) {
    if (server.textOf("SHOW server_encoding") != "UTF8") {
        throw Error(ErrorKind::BadStore,
                    "this database does not keep its texts as UTF-8; have it made anew (createdb --encoding=UTF8 "
                    "--template=template0 " +
                        address.database + ")",
                    address.text);
    }
    server.begin();
    try {
        if (schemaVersionOf(server) != 0)
            throw Error(ErrorKind::BadStore, "a collection is already in this database; name another one",
                        address.text);
        fill();
        keepFolder(server, folder);
        // The file comes last but one: a database without its file can still be opened by its address.
        writeAddressFile(folder, address);
    } catch (...) {
        server.rollback();
        throw;
    }
    try {
        server.commit();
    } catch (...) {
        std::error_code ignored;
        if (!server.lost()) fs::remove(folder / kAddressFile, ignored);
        throw;
    }
}

}  // namespace ringrule
