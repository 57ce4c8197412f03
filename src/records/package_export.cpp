// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>

#include "records/collection_file.h"
#include "records/collection_place.h"
#include "records/durable_file.h"
#include "records/new_folder.h"
#include "records/record_rows.h"
#include "records/statement.h"
#include "records/table_schema.h"
#include "records/text_file.h"
#include "ringrule/error.h"
#include "ringrule/records/package.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

void writeTable(const Database& database, const RecordKind& kind, const fs::path& file) {
    TextFile out(file);
    std::string head;
    for (const std::string& name : tableColumns(kind)) head += (head.empty() ? "" : ",") + name;
    out.write(head + "\r\n");
    eachRecord(database, kind, Links::AsCodes, {}, [&](const Record& record) { out.write(tableLine(kind, record)); });
    out.close();
}

Json resourceOf(const RecordKind& kind) {
    return {{"name", kind.name},
            {"title", kind.title},
            {"path", kind.name + ".csv"},
            {"profile", "tabular-data-resource"},
            {"format", "csv"},
            {"mediatype", "text/csv"},
            {"encoding", "utf-8"},
            {"dialect", {{"delimiter", ","}, {"lineTerminator", "\r\n"}, {"doubleQuote", true}, {"header", true}}},
            {"schema", tableSchemaOf(kind)}};
}

Json settingsOf(const Database& database) {
    // Where a shared collection's folder is concerns its database alone.
    Statement rows(database, "SELECT key, value FROM meta WHERE key <> ? ORDER BY key");
    rows.bind(std::string(kFolderSetting)).run();
    Json settings = Json::object();
    while (rows.next()) {
        const std::string key = rows.text();
        settings[key] = rows.text();
    }
    return settings;
}

void copyFiles(const fs::path& from, const fs::path& to) {
    std::error_code none;
    fs::create_directories(to);
    for (const auto& entry : fs::directory_iterator(from, none))
        if (entry.is_regular_file() && !entry.path().filename().string().starts_with('.'))
            copyWhole(entry.path(), to / entry.path().filename());
}

}  // namespace

void exportPackage(const Store& store, const fs::path& folder, const PackageOptions& options) {
    const Database& database = CollectionFile::of(store);
    NewFolder fresh(folder);
    Json resources = Json::array();
    Store::reading(store, [&] {  // one state of the collection for every table
        for (const RecordKind& kind : recordKinds()) {
            writeTable(database, kind, fresh.path() / (kind.name + ".csv"));
            resources.push_back(resourceOf(kind));
        }
    });
    const Json package{
        {"profile", "tabular-data-package"},
        {"name", "ringrule-collection"},
        {"title", "A collection of Ringrule"},
        {"description",
         "Days are YYYY-MM-DD, lengths millimetres, pixels those of the upright photo. A text that begins with = + - @ "
         "or an apostrophe has an apostrophe before it, so that no spreadsheet runs it."},
        {"ringrule", {{"format", "ringrule-package/1"}, {"settings", settingsOf(database)}}},
        {"resources", resources}};
    TextFile out(fresh.path() / "datapackage.json");
    out.write(package.dump(1, ' ', false, Json::error_handler_t::replace) + "\n");
    out.close();
    if (options.photos) copyFiles(store.folder() / "photos", fresh.path() / "photos");
    copyFiles(store.folder() / "calibration", fresh.path() / "calibration");
    const fs::path species = store.folder() / "species.json";
    if (fs::exists(species)) copyWhole(species, fresh.path() / "species.json");
    fresh.keep();
}

}  // namespace ringrule
