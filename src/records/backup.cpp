// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/backup.h"

#include <algorithm>
#include <charconv>

#include <unistd.h>

#include "records/backups.h"
#include "records/durable_file.h"
#include "records/opening.h"
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

std::string quoted(const std::string& text) {
    std::string sql = "'";
    for (const char c : text) sql += c == '\'' ? "''" : std::string(1, c);
    return sql + "'";
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

/// Throws when another program has the database open; what was in its log is in the file itself then. A damaged
/// database cannot tell.
void mustBeAlone(const fs::path& file) {
    try {
        Database database(file, Database::Mode::ReadWrite);
        if (database.textOf("PRAGMA journal_mode = DELETE") == "delete") return;
    } catch (const Error& error) {
        if (std::string(error.what()).find("another program") == std::string::npos) return;
    }
    throw Error(ErrorKind::BadStore, "another program has this collection open; close it, then restore", file.string());
}

std::vector<std::string> photosMissing(const fs::path& folder) {
    const Database database(databaseOf(folder), Database::Mode::ReadOnly);
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

}  // namespace

fs::path backUpDatabase(Database& database, const fs::path& folder, const std::string& ending) {
    const fs::path backups = backupFolder(folder);
    const fs::path file = backups / (kStart + nowUtc().substr(0, 10) + ending + ".sqlite");
    const UnfinishedFile part(backups / (".backup-" + std::to_string(::getpid()) + ".part"));
    database.run("VACUUM INTO " + quoted(part.path().string()));
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

std::vector<fs::path> backupsOf(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder / "backups", none)) {
        const std::string name = entry.path().filename().string();
        if (name.starts_with(kStart) && name.ends_with(".sqlite")) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

Restored restoreBackup(const fs::path& folder, const std::string& named) {
    Restored restored;
    restored.backup = findBackup(folder, named);
    checkDatabaseFile(restored.backup, Thoroughness::Whole);
    // Copied first: with a full disk nothing has happened yet.
    const UnfinishedFile fresh(folder / ".collection.sqlite.restored");
    copyWhole(restored.backup, fresh.path());
    restored.replaced = keepReplaced(folder);
    putInPlace(fresh.path(), databaseOf(folder));
    restored.missingPhotos = photosMissing(folder);
    return restored;
}

}  // namespace ringrule
