// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <filesystem>
#include <set>
#include <string>

#include "records/database.h"
#include "ringrule/records/store.h"

// Tests tagged [either] run twice: on SQLite, and by script/with-postgresql once more on a server. Those tagged
// [.server] run there only.

/// The address of the test server without a database; empty: SQLite.
inline std::string testServer() {
    const char* const server = std::getenv("RINGRULE_TEST_SERVER");
    return server == nullptr ? std::string() : server;
}

/// The address of an empty database of this name, made anew.
inline std::string emptyDatabase(const std::string& name) {
    const std::string address = testServer() + "/" + name;
    static std::set<std::string> made;
    if (made.insert(name).second) {
        ringrule::Database(ringrule::readServerAddress(testServer() + "/postgres"))
            .run("CREATE DATABASE " + name + " TEMPLATE template0");
    } else {
        ringrule::Database(ringrule::readServerAddress(address)).run("DROP SCHEMA IF EXISTS ringrule CASCADE");
    }
    return address;
}

/// A new collection in `folder`; its database is on the test server when there is one, under the folder's name.
inline ringrule::Store newCollection(const std::filesystem::path& folder) {
    if (testServer().empty()) return ringrule::Store::create(folder);
    return ringrule::Store::createShared(emptyDatabase(folder.filename().string()), folder);
}
