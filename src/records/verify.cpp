// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/verify.h"

#include <algorithm>
#include <map>

#include "records/collection_place.h"
#include "records/opening.h"
#include "records/photo_files.h"
#include "records/record_rules.h"
#include "records/schema.h"
#include "records/statement.h"
#include "ringrule/error.h"
#include "ringrule/records/record_kind.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// The hash of each original by the name of its file.
std::map<std::string, std::string> hashesOf(const Database& database) {
    Statement rows(database, "SELECT stored_name, content_hash FROM photo");
    rows.run();
    std::map<std::string, std::string> hashes;
    while (rows.next()) {
        std::string name = rows.text();
        hashes[std::move(name)] = rows.text();
    }
    return hashes;
}

void checkOriginal(const fs::path& file, const std::string& hash, Verification& found) {
    std::error_code ignored;
    if (!fs::exists(file, ignored)) {
        found.troubles.push_back(file.string() + ": this original is missing; put it back from a copy of the folder");
        return;
    }
    try {
        if (contentHashOf(file) == hash) return;
        found.troubles.push_back(file.string() + ": this original was altered; put it back from a copy of the folder");
    } catch (const Error& error) {
        found.troubles.emplace_back(error.what());
    }
}

/// Reads every row: a page that the server finds damaged is told. Links are the server's to keep.
void readWhole(const Database& server) {
    for (const RecordKind& kind : recordKinds())
        static_cast<void>(server.textOf("SELECT sum(length(CAST(t AS TEXT))) FROM " + kind.table + " t"));
}

}  // namespace

Verification verifyCollection(const fs::path& where, const std::function<bool(double)>& progress) {
    const CollectionPlace place = placeOf(where);
    const fs::path& folder = place.folder;
    if (!place.server) checkDatabaseFile(databaseOf(folder), Thoroughness::Whole);
    const Database database = databaseAt(place, Database::Mode::ReadOnly);
    if (place.server) {
        checkServer(database, *place.server);
        readWhole(database);
    }
    const auto hashes = hashesOf(database);
    Verification found;
    if (schemaVersionOf(database) == currentSchemaVersion())
        found.toCorrect = unbelievableRecords(database);
    else
        found.notes.emplace_back("this collection is of an older version; open it once, and its records are looked at");
    for (const auto& [name, hash] : hashes) {
        if (progress && !progress(static_cast<double>(found.photos) / static_cast<double>(hashes.size())))
            throw Error(ErrorKind::Stopped, "stopped before every photo was read");
        ++found.photos;
        checkOriginal(folder / "photos" / name, hash, found);
    }
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(folder / "photos", none)) {
        if (!hashes.contains(entry.path().filename().string()))
            found.notes.push_back(entry.path().string() + ": no photo of the collection is in this file");
    }
    std::sort(found.notes.begin(), found.notes.end());
    return found;
}

}  // namespace ringrule
