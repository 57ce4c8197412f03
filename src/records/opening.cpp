// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/opening.h"

#include <array>
#include <cstdint>
#include <fstream>
#include <string>
#include <string_view>

#include "records/database.h"
#include "records/schema.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// Every page of a file of this size is read in a small part of half a second.
constexpr std::uintmax_t kReadWhole = 24U << 20U;

/// Tables whose size grows with the photos: read whole by a check, a backup and an archive.
constexpr std::string_view kLargeTables = " measure measure_line landmark photo change_log ";

[[noreturn]] void failDamaged(const fs::path& file) {
    throw Error(ErrorKind::BadStore, "the collection's database is damaged; restore it from a backup", file.string());
}

std::uint32_t bigEndian(const std::array<char, 100>& head, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value << 8U | static_cast<unsigned char>(head[at + i]);
    return value;
}

std::array<char, 100> headOf(const fs::path& file) {
    std::array<char, 100> head{};
    std::ifstream(file, std::ios::binary).read(head.data(), head.size());
    return head;
}

void checkStart(const fs::path& file) {
    if (std::string_view(headOf(file).data(), 15) == "SQLite format 3") return;
    throw Error(ErrorKind::BadStore, "this is not a collection's database, or it is damaged; restore it from a backup",
                file.string());
}

/// A file that was cut is shorter than the pages its head counts (SQLite's file format, section 1.3).
void checkLength(const fs::path& file) {
    const std::array<char, 100> head = headOf(file);
    const std::uint32_t written = bigEndian(head, 16) >> 16U;
    const std::uintmax_t pageBytes = written == 1 ? 65536 : written;
    const bool countHolds = bigEndian(head, 24) == bigEndian(head, 92);
    fs::path log = file;
    log += "-wal";
    std::error_code ignored;
    if (countHolds && !fs::exists(log, ignored) && fs::file_size(file) < pageBytes * bigEndian(head, 28))
        failDamaged(file);
}

/// A program that was killed in the middle of a change outside the write-ahead log left a journal: it is played back
/// first, for a file that is opened for reading only cannot be read with it.
void playBackJournal(const fs::path& file) {
    fs::path journal = file;
    journal += "-journal";
    std::error_code ignored;
    if (!fs::exists(journal, ignored)) return;
    const Database database(file, Database::Mode::ReadWrite);
    static_cast<void>(database.textOf("SELECT count(*) FROM sqlite_schema"));
}

void checkSmallTables(const Database& database, const fs::path& file) {
    std::string name;
    while (
        !(name = database.textOf("SELECT min(name) FROM sqlite_schema WHERE type = 'table' AND name > '" + name + "'"))
             .empty()) {
        if (kLargeTables.find(" " + name + " ") != std::string_view::npos) continue;
        if (database.textOf("PRAGMA integrity_check('" + name + "')") != "ok") failDamaged(file);
    }
}

}  // namespace

void failNewer(int version, const std::string& place) {
    throw Error(ErrorKind::BadStore,
                "a newer Ringrule wrote this collection (version " + std::to_string(version) + ", this one reads " +
                    std::to_string(currentSchemaVersion()) + "); it was left as it is: install the newer Ringrule",
                place);
}

fs::path databaseOf(const fs::path& folder) {
    return folder / "collection.sqlite";
}

void mustBeCollection(const fs::path& folder) {
    std::error_code ignored;
    if (!fs::is_directory(folder, ignored)) {
        throw Error(ErrorKind::BadStore, "there is no such folder; create a collection first", folder.string());
    }
    if (!fs::exists(databaseOf(folder), ignored)) {
        throw Error(ErrorKind::BadStore, "this folder is not a collection (it holds no collection.sqlite)",
                    folder.string());
    }
}

void checkDatabaseFile(const fs::path& file, Thoroughness thoroughness) {
    checkStart(file);
    playBackJournal(file);
    checkLength(file);
    const Database database(file, Database::Mode::ReadOnly);
    if (database.textOf("PRAGMA application_id") != std::to_string(kApplicationId)) {
        throw Error(ErrorKind::BadStore, "this database belongs to another program, not to Ringrule", file.string());
    }
    const int version = schemaVersionOf(database);
    if (version > currentSchemaVersion()) failNewer(version, file.string());
    if (thoroughness == Thoroughness::Opening && fs::file_size(file) > kReadWhole) {
        checkSmallTables(database, file);
        return;
    }
    if (database.textOf("PRAGMA integrity_check(1)") != "ok" || !database.textOf("PRAGMA foreign_key_check").empty())
        failDamaged(file);
}

}  // namespace ringrule
