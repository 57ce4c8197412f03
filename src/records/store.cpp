// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/store.h"

#include "records/backups.h"
#include "records/collection_place.h"
#include "records/opening.h"
#include "records/record_rows.h"
#include "records/schema.h"
#include "records/server_copy.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "records/utc_time.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

void makeFolder(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) throw Error(ErrorKind::BadStore, "the folder cannot be made (" + error.message() + ")", folder.string());
}

void mustBeFree(const fs::path& folder) {
    std::error_code ignored;
    if (!fs::exists(databaseOf(folder), ignored) && !fs::exists(folder / kAddressFile, ignored)) return;
    throw Error(ErrorKind::BadStore, "a collection is already here; open it, or choose another folder",
                folder.string());
}

/// What makes a collection of an empty database, inside the caller's transaction.
void fill(Database& database) {
    migrate(database);
    Statement(database,
              "INSERT INTO meta VALUES ('format', 'ringrule-collection'), ('created_at', ?), ('created_with', ?)")
        .bind(nowUtc())
        .bind(std::string(RINGRULE_VERSION))
        .run();
}

void setUp(Database& database) {
    database.run("PRAGMA foreign_keys = ON");
    database.run("PRAGMA journal_mode = WAL");
    // FULL: a session that was reported as stored survives a power cut.
    database.run("PRAGMA synchronous = FULL");
    // 64 MB of pages at hand: a year of a large collection is read without fetching the same page again and again.
    database.run("PRAGMA cache_size = -65536");
}

/// Makes the database under another name first: a program killed here leaves no half collection behind.
void buildDatabase(const fs::path& file) {
    fs::path unfinished = file;
    unfinished += ".new";
    std::error_code ignored;
    fs::remove(unfinished, ignored);
    try {
        Database database(unfinished, Database::Mode::ReadWrite);
        setUp(database);
        database.begin();
        try {
            fill(database);
        } catch (...) {
            database.rollback();
            throw;
        }
        database.commit();
    } catch (...) {
        fs::remove(unfinished, ignored);
        throw;
    }
    fs::rename(unfinished, file);
}

/// A program of an older version must not write to what another one brought up to date meanwhile.
void mustBeCurrent(const Database& database, const fs::path& folder) {
    const int version = schemaVersionOf(database);
    if (version > currentSchemaVersion()) failNewer(version, folder.string());
}

}  // namespace

void logChange(Database& database, const Change& change) {
    Statement(database,
              "INSERT INTO change_log (id, at, who, what, subject, before, after) VALUES (?, ?, ?, ?, ?, ?, ?)")
        .bind(nextNumber(database, "change_log"))
        .bind(nowUtc())
        .bind(change.who)
        .bind(change.what)
        .bind(change.subject)
        .bind(change.before)
        .bind(change.after)
        .run();
}

Store::Store(std::unique_ptr<State> state) : state_(std::move(state)) {}
Store::~Store() = default;
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;

Store Store::create(const fs::path& folder) {
    mustBeFree(folder);
    makeFolder(folder / "photos");
    makeFolder(folder / "calibration");
    buildDatabase(databaseOf(folder));
    return open(folder);
}

Store Store::createShared(const std::string& addressText, const fs::path& folder) {
    const ServerAddress address = readServerAddress(addressText);
    mustBeFree(folder);
    {
        Database database(address);
        makeFolder(folder / "photos");
        makeFolder(folder / "calibration");
        fillServer(database, address, folder, [&] { fill(database); });
    }
    return open(folder);
}

Store Store::open(const fs::path& where) {
    const CollectionPlace place = placeOf(where);
    const fs::path& folder = place.folder;
    if (!place.server) checkDatabaseFile(databaseOf(folder), Thoroughness::Opening);
    auto state = std::make_unique<State>(place);
    if (place.server)
        checkServer(state->database, *place.server);
    else
        setUp(state->database);
    if (const int version = schemaVersionOf(state->database); version < currentSchemaVersion()) {
        backUpDatabase(state->database, folder, "-version-" + std::to_string(version));
        migrate(state->database);
    }
    makeFolder(folder / "photos");
    return Store(std::move(state));
}

fs::path Store::folder() const {
    return state_->folder;
}

void Store::setKeeper(const std::string& initials) {
    state_->keeper = initials;
}

std::vector<Change> Store::changes() const {
    Statement rows(state_->database,
                   "SELECT at, who, what, subject, before, after, id, undoes FROM change_log ORDER BY id");
    rows.run();
    std::vector<Change> all;
    while (rows.next()) {
        all.push_back({rows.text(), rows.text(), rows.text(), rows.text(), rows.text(), rows.text(), rows.number(),
                       rows.numberOrNone()});
    }
    return all;
}

std::int64_t Store::newestChange() const {
    Statement newest(state_->database, "SELECT coalesce(max(id), 0) FROM change_log");
    return newest.run().next() ? newest.number() : 0;
}

void Store::begin() {
    // The first change of a day is made on top of a copy of what was there before.
    if (state_->database.depth() == 0) backUpOnceADay(state_->database, state_->folder, state_->backedUpOn);
    const bool outermost = state_->database.depth() == 0;
    state_->database.begin();
    try {
        if (outermost) mustBeCurrent(state_->database, state_->folder);
    } catch (...) {
        state_->database.rollback();
        throw;
    }
    state_->copied.emplace_back();
}

void Store::beginReading() const {
    state_->database.beginReading();
}

void Store::endReading() const noexcept {
    state_->database.endReading();
}

void Store::commit() {
    const auto copied = std::move(state_->copied.back());
    state_->copied.pop_back();
    try {
        state_->database.commit();
    } catch (...) {
        // When the server went away the change may have been confirmed there: then its photos must stay.
        if (!state_->database.lost()) {
            for (const fs::path& photo : copied) fs::remove(photo);
        }
        throw;
    }
    if (!state_->copied.empty()) {
        auto& outer = state_->copied.back();
        outer.insert(outer.end(), copied.begin(), copied.end());
    }
}

void Store::rollback() {
    // While nobody else writes: another program may be about to add the same photo.
    std::error_code ignored;
    if (!state_->database.lost()) {
        for (const fs::path& photo : state_->copied.back()) fs::remove(photo, ignored);
    }
    state_->copied.pop_back();
    state_->database.rollback();
}

}  // namespace ringrule
