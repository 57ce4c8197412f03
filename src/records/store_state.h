// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "records/collection_place.h"
#include "records/database.h"
#include "ringrule/records/store.h"

namespace ringrule {

struct Store::State {
    explicit State(const CollectionPlace& place) : folder(place.folder), database(databaseAt(place)) {}

    std::filesystem::path folder;
    Database database;
    std::string keeper;
    std::string backedUpOn;  ///< the day whose backup is known to be there
    /// Photos copied in each open transaction, outermost first: a rollback takes them away again.
    std::vector<std::vector<std::filesystem::path>> copied;
};

/// Adds a line to the change log, inside the caller's transaction.
void logChange(Database& database, const Change& change);

}  // namespace ringrule
