// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/store.h"

#include <array>
#include <chrono>
#include <fstream>

#include "records/schema.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kFileName = "collection.sqlite";

std::string nowUtc() {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const auto day = std::chrono::floor<std::chrono::days>(now);
    const std::chrono::hh_mm_ss time{now - day};
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "T%02d:%02d:%02dZ", static_cast<int>(time.hours().count()),
                  static_cast<int>(time.minutes().count()), static_cast<int>(time.seconds().count()));
    return formatDate(day) + text.data();
}

void makeFolder(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) throw Error(ErrorKind::BadStore, "the folder cannot be made (" + error.message() + ")", folder.string());
}

void setUp(Database& database) {
    database.run("PRAGMA foreign_keys = ON");
    database.run("PRAGMA journal_mode = WAL");
    // FULL: a session that was reported as stored survives a power cut.
    database.run("PRAGMA synchronous = FULL");
}

/// Looks at a file without changing a byte of it. Throws when it is not a collection that this program can open.
void checkBeforeOpening(const fs::path& file) {
    std::array<char, 16> head{};
    std::ifstream in(file, std::ios::binary);
    in.read(head.data(), head.size());
    if (!in || std::string_view(head.data(), 15) != "SQLite format 3") {
        throw Error(ErrorKind::BadStore,
                    "this is not a collection's database, or it is damaged; restore it from a backup", file.string());
    }
    const Database database(file, Database::Mode::ReadOnly);
    if (database.textOf("PRAGMA application_id") != std::to_string(kApplicationId)) {
        throw Error(ErrorKind::BadStore, "this database belongs to another program, not to Ringrule", file.string());
    }
    const int version = schemaVersionOf(database);
    if (version > currentSchemaVersion()) {
        throw Error(ErrorKind::BadStore,
                    "a newer Ringrule wrote this collection (version " + std::to_string(version) + ", this one reads " +
                        std::to_string(currentSchemaVersion()) + "); it was left as it is: install the newer Ringrule",
                    file.string());
    }
    if (database.textOf("PRAGMA integrity_check(1)") != "ok" || !database.textOf("PRAGMA foreign_key_check").empty()) {
        throw Error(ErrorKind::BadStore, "the collection's database is damaged; restore it from a backup",
                    file.string());
    }
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
            migrate(database);
            Statement(database,
                      "INSERT INTO meta VALUES ('format', 'ringrule-collection'), ('created_at', ?), "
                      "('created_with', ?)")
                .bind(nowUtc())
                .bind(std::string(RINGRULE_VERSION))
                .run();
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

}  // namespace

void logChange(Database& database, const Change& change) {
    Statement(database, "INSERT INTO change_log (at, who, what, subject, before, after) VALUES (?, ?, ?, ?, ?, ?)")
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
    if (fs::exists(folder / kFileName)) {
        throw Error(ErrorKind::BadStore, "a collection is already here; open it, or choose another folder",
                    folder.string());
    }
    makeFolder(folder / "photos");
    makeFolder(folder / "calibration");
    buildDatabase(folder / kFileName);
    return open(folder);
}

Store Store::open(const fs::path& folder) {
    const fs::path file = folder / kFileName;
    std::error_code ignored;
    if (!fs::is_directory(folder, ignored)) {
        throw Error(ErrorKind::BadStore, "there is no such folder; create a collection first", folder.string());
    }
    if (!fs::exists(file, ignored)) {
        throw Error(ErrorKind::BadStore, "this folder is not a collection (it holds no collection.sqlite)",
                    folder.string());
    }
    checkBeforeOpening(file);
    auto state = std::make_unique<State>(folder, file);
    setUp(state->database);
    migrate(state->database);
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

void Store::begin() {
    state_->database.begin();
    state_->copied.emplace_back();
}

void Store::commit() {
    const auto copied = std::move(state_->copied.back());
    state_->copied.pop_back();
    try {
        state_->database.commit();
    } catch (...) {
        for (const fs::path& photo : copied) fs::remove(photo);
        throw;
    }
    if (!state_->copied.empty()) {
        auto& outer = state_->copied.back();
        outer.insert(outer.end(), copied.begin(), copied.end());
    }
}

void Store::rollback() {
    state_->database.rollback();
    std::error_code ignored;
    for (const fs::path& photo : state_->copied.back()) fs::remove(photo, ignored);
    state_->copied.pop_back();
}

}  // namespace ringrule
