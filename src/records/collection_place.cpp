// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/collection_place.h"

#include <fstream>

#include "records/durable_file.h"
#include "records/opening.h"
#include "records/schema.h"
#include "records/text_file.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// The one line of an address file that is neither empty nor a remark.
ServerAddress addressIn(const fs::path& file) {
    std::ifstream in(file);
    std::string line;
    while (std::getline(in, line)) {
        while (!line.empty() && (line.back() == '\r' || line.back() == ' ')) line.pop_back();
        if (line.empty() || line.front() == '#') continue;
        try {
            return readServerAddress(line);
        } catch (const Error& error) {
            throw Error(ErrorKind::BadStore, error.what(), file.string());
        }
    }
    throw Error(ErrorKind::BadStore, "this file should hold the address of the collection's database", file.string());
}

CollectionPlace placeOfServer(const std::string& text) {
    CollectionPlace place{{}, readServerAddress(text)};
    const Database database(*place.server);
    checkServer(database, *place.server);
    place.folder = database.textOf(std::string("SELECT value FROM meta WHERE key = '") + kFolderSetting + "'");
    std::error_code ignored;
    if (!fs::is_directory(place.folder, ignored)) {
        throw Error(ErrorKind::BadStore,
                    "the photos of this collection are in \"" + place.folder.string() +
                        "\", which is not there on this machine; name the shared folder itself as it is called here",
                    text);
    }
    return place;
}

}  // namespace

CollectionPlace addressedPlace(const fs::path& folder) {
    return {folder, addressIn(folder / kAddressFile)};
}

CollectionPlace placeOf(const fs::path& where) {
    if (isServerAddress(where.string())) return placeOfServer(where.string());
    std::error_code ignored;
    const fs::path file = where / kAddressFile;
    if (!fs::exists(file, ignored)) {
        mustBeCollection(where);
        return {where, {}};
    }
    if (fs::exists(databaseOf(where), ignored)) {
        throw Error(ErrorKind::BadStore,
                    "this folder holds both collection.sqlite and collection.address: take away the one that is not "
                    "the collection",
                    where.string());
    }
    return addressedPlace(where);
}

Database databaseAt(const CollectionPlace& place, Database::Mode mode) {
    return place.server ? Database(*place.server) : Database(databaseOf(place.folder), mode);
}

void checkServer(const Database& database, const ServerAddress& address) {
    const int version = schemaVersionOf(database);
    if (version == 0) {
        throw Error(ErrorKind::BadStore,
                    "this database holds no collection; create one (ringrule create), or restore a backup",
                    address.text);
    }
    if (version > currentSchemaVersion()) failNewer(version, address.text);
}

void writeAddressFile(const fs::path& folder, const ServerAddress& address) {
    const UnfinishedFile part(folder / ".collection.address.new");
    TextFile out(part.path());
    out.write(
        "# The database of this collection is on a server that several workstations share; its photos are here.\n" +
        address.text + "\n");
    out.close();
    putInPlace(part.path(), folder / kAddressFile);
}

}  // namespace ringrule
