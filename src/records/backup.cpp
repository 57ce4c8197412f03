// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/backup.h"

#include <algorithm>
#include <charconv>

#include <unistd.h>

#include "records/backups.h"
#include "records/collection_place.h"
#include "records/database_errors.h"
#include "records/durable_file.h"
#include "records/opening.h"
#include "records/schema.h"
#include "records/server_copy.h"
#include "records/server_locks.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "records/utc_time.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kStart = "collection-";

fs::path backupFolder(const fs::path& folder) {
    fs::path backups = folder / "backups";
    std::error_code error;
    fs::create_directories(backups, error);
    if (error)
        throw Error(ErrorKind::BadStore, "the folder cannot be made (" + error.message() + ")", backups.string());
    return backups;
}

int backupsKept(const Database& database) {
    const std::string text = database.textOf("SELECT value FROM meta WHERE key = 'backups_kept'");
    int kept = kBackupsKept;
    std::from_chars(text.data(), text.data() + text.size(), kept);
    return kept;
}

/// The present moment as part of a file name.
std::string stamp() {
    std::string text = nowUtc();
    std::erase(text, ':');
    return text;
}

void removeOldest(const fs::path& folder, int kept) {
    auto files = backupsOf(folder);
    std::error_code ignored;
    for (std::size_t i = 0; i + static_cast<std::size_t>(std::max(kept, 1)) < files.size(); ++i)
        fs::remove(files[i], ignored);
}

fs::path findBackup(const fs::path& folder, const std::string& named) {
    if (named.empty()) {
        const auto files = backupsOf(folder);
        if (files.empty()) throw Error(ErrorKind::BadStore, "there is no backup in this collection", folder.string());
        return files.back();
    }
    std::error_code ignored;
    for (const fs::path& file : {folder / "backups" / named, folder / "backups" / (named + ".sqlite"), fs::path(named)})
        if (fs::is_regular_file(file, ignored)) return file;
    throw Error(ErrorKind::BadStore, "there is no backup \"" + named + "\"; see ringrule backup --list",
                folder.string());
}

[[noreturn]] void failNotAlone(const std::string& place) {
    throw Error(ErrorKind::BadStore, "another program has this collection open; close it, then restore", place);
}

/// Throws when another program has the database open; what was in its log is in the file itself then. A damaged
/// database cannot tell.
void mustBeAlone(const fs::path& file) {
    try {
        Database database(file, Database::Mode::ReadWrite);
        if (database.textOf("PRAGMA journal_mode = DELETE") == "delete") return;
    } catch (const DatabaseBusy&) {
        failNotAlone(file.string());
    } catch (const Error&) {
        return;
    }
    failNotAlone(file.string());
}

/// The photos that a collection's database lists and its folder lacks.
std::vector<std::string> photosMissing(const Database& database, const fs::path& folder) {
    Statement rows(database, "SELECT stored_name FROM photo ORDER BY stored_name");
    rows.run();
    std::vector<std::string> missing;
    while (rows.next()) {
        const std::string name = rows.text();
        if (!fs::exists(folder / "photos" / name)) missing.push_back(name);
    }
    return missing;
}

/// Keeps what a restored backup replaces; returns where.
fs::path keepReplaced(const fs::path& folder) {
    const fs::path file = databaseOf(folder);
    if (!fs::exists(file)) return {};
    mustBeAlone(file);
    const fs::path kept = backupFolder(folder) / ("replaced-" + stamp() + ".sqlite");
    copyWhole(file, kept);
    // A log that belongs to the database that goes must not meet the one that comes.
    for (const char* ending : {"-wal", "-shm"}) {
        fs::path beside = file;
        beside += ending;
        if (!fs::exists(beside)) continue;
        fs::path copy = kept;
        copy += ending;
        copyWhole(beside, copy);
        fs::remove(beside);
    }
    return kept;
}

/// Where to restore to: the folder's database may hold nothing any more, so it is not looked into.
CollectionPlace placeToRestore(const fs::path& where) {
    if (!isServerAddress(where.string())) return addressedPlace(where);
    return placeOf(where);
}

/// The same for a collection on a server: in one transaction, when no other program has it open.
Restored restoreShared(const CollectionPlace& place, const std::string& named) {
    Restored restored;
    restored.backup = findBackup(place.folder, named);
    checkDatabaseFile(restored.backup, Thoroughness::Whole);
    const UnfinishedFile fresh(place.folder / (".restored-" + std::to_string(::getpid()) + ".sqlite"));
    copyWhole(restored.backup, fresh.path());
    {
        Database file(fresh.path(), Database::Mode::ReadWrite);
        file.run("PRAGMA journal_mode = DELETE");
        migrate(file);
    }
    Database server(*place.server);
    if (server.textOf("SELECT CASE WHEN pg_try_advisory_lock(" + std::to_string(kOpenLock) + ") THEN 1 ELSE 0 END") !=
        "1")
        failNotAlone(place.server->text);
    const int version = schemaVersionOf(server);
    if (version > currentSchemaVersion()) failNewer(version, place.server->text);
    if (version > 0) {
        restored.replaced = backupFolder(place.folder) / ("replaced-" + stamp() + ".sqlite");
        const UnfinishedFile part(place.folder / (".replaced-" + std::to_string(::getpid()) + ".sqlite"));
        copyToFile(server, part.path());
        putInPlace(part.path(), restored.replaced);
    }
    migrate(server);
    server.begin();
    try {
        copyFromFile(fresh.path(), server);
        keepFolder(server, place.folder);
    } catch (...) {
        server.rollback();
        throw;
    }
    server.commit();
    restored.missingPhotos = photosMissing(server, place.folder);
    return restored;
}

}  // namespace

fs::path backUpDatabase(Database& database, const fs::path& folder, const std::string& ending) {
    const fs::path backups = backupFolder(folder);
    const fs::path file = backups / (kStart + nowUtc().substr(0, 10) + ending + ".sqlite");
    const UnfinishedFile part(backups / (".backup-" + std::to_string(::getpid()) + ".part"));
    copyToFile(database, part.path());
    checkDatabaseFile(part.path(), Thoroughness::Opening);
    putInPlace(part.path(), file);
    if (const int kept = backupsKept(database); kept > 0) removeOldest(folder, kept);
    return file;
}

void backUpOnceADay(Database& database, const fs::path& folder, std::string& knownDay) {
    const std::string today = nowUtc().substr(0, 10);
    if (knownDay == today) return;
    knownDay = today;
    if (backupsKept(database) <= 0) return;
    if (database.textOf("SELECT value FROM meta WHERE key = 'created_at'").starts_with(today)) return;
    for (const fs::path& file : backupsOf(folder))
        if (file.filename().string().starts_with(kStart + today)) return;
    try {
        backUpDatabase(database, folder);
    } catch (...) {
        knownDay.clear();
        throw;
    }
}

fs::path backUp(const Store& store) {
    return backUpDatabase(store.state_->database, store.folder(), stamp().substr(10));
}

std::vector<fs::path> backupsOf(const fs::path& where) {
    const fs::path folder = isServerAddress(where.string()) ? placeOf(where).folder : where;
    std::vector<fs::path> files;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder / "backups", none)) {
        const std::string name = entry.path().filename().string();
        if (name.starts_with(kStart) && name.ends_with(".sqlite")) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

Restored restoreBackup(const fs::path& where, const std::string& named) {
    std::error_code ignored;
    if (isServerAddress(where.string()) || fs::exists(where / kAddressFile, ignored))
        return restoreShared(placeToRestore(where), named);
    const fs::path& folder = where;
    Restored restored;
    restored.backup = findBackup(folder, named);
    checkDatabaseFile(restored.backup, Thoroughness::Whole);
    // Copied first: with a full disk nothing has happened yet.
    const UnfinishedFile fresh(folder / ".collection.sqlite.restored");
    copyWhole(restored.backup, fresh.path());
    restored.replaced = keepReplaced(folder);
    putInPlace(fresh.path(), databaseOf(folder));
    restored.missingPhotos = photosMissing(Database(databaseOf(folder), Database::Mode::ReadOnly), folder);
    return restored;
}

}  // namespace ringrule
