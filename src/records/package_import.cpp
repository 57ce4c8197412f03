// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include <nlohmann/json.hpp>

#include "records/collection_file.h"
#include "records/csv_text.h"
#include "records/durable_file.h"
#include "records/new_folder.h"
#include "records/photo_files.h"
#include "records/record_rows.h"
#include "records/record_values.h"
#include "records/schema.h"
#include "records/statement.h"
#include "records/table_schema.h"
#include "ringrule/error.h"
#include "ringrule/records/package.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

/// The columns of each table as the package itself lists them: an older version wrote fewer tables and columns.
std::map<std::string, std::vector<std::string>> listedColumns(const nlohmann::json& descriptor) {
    std::map<std::string, std::vector<std::string>> columns;
    for (const auto& table : descriptor.value("resources", nlohmann::json::array()))
        for (const auto& field : table.at("schema").at("fields"))
            columns[table.at("name").get<std::string>()].push_back(field.at("name").get<std::string>());
    return columns;
}

/// A package that is being read.
struct Package {
    fs::path folder;
    nlohmann::json descriptor;
    std::map<std::string, std::vector<std::string>> columns;

    [[nodiscard]] bool holds(const RecordKind& kind) const { return columns.contains(kind.name); }
};

Package readPackage(const fs::path& folder) {
    const fs::path file = folder / "datapackage.json";
    auto json = nlohmann::json::parse(textOfFile(file.string()), nullptr, false);
    if (!json.is_object() || !json.contains("ringrule") || !json["ringrule"].is_object() ||
        json["ringrule"].value("format", "") != "ringrule-package/1")
        throw Error(ErrorKind::BadData, "this package was not written by Ringrule; import its tables one by one",
                    file.string());
    try {
        return {folder, json, listedColumns(json)};
    } catch (const nlohmann::json::exception&) {
        throw Error(ErrorKind::BadData, "it does not say which columns its tables have; export the package again",
                    file.string());
    }
}

/// The table of one kind, line by line, its columns by name.
class TableReader {
public:
    TableReader(const RecordKind& kind, const Package& package)
        : file_((package.folder / (kind.name + ".csv")).string()),
          reader_(textOfFile(file_), ',', file_),
          columns_(package.columns.at(kind.name)) {
        const auto head = reader_.next();
        if (!head || *head != columns_) fail("its columns are not those that datapackage.json lists");
        const auto known = tableColumns(kind);
        for (const std::string& column : columns_)
            if (std::find(known.begin(), known.end(), column) == known.end())
                fail("this version knows no column \"" + column + "\"");
    }

    [[nodiscard]] bool next(Record& record) {
        const auto cells = reader_.next();
        if (!cells) return false;
        if (cells->size() != columns_.size()) fail("this line has another number of cells");
        record = {};
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            if (columns_[i] == "id")
                record.id = number((*cells)[i]);
            else if (columns_[i] == "row_version")
                record.version = number((*cells)[i]);
            else if (!(*cells)[i].empty())
                record.values[columns_[i]] = unguarded((*cells)[i]);
        }
        return true;
    }

    [[noreturn]] void fail(const std::string& what) const {
        throw Error(ErrorKind::BadData,
                    "line " + std::to_string(reader_.line()) + ": " + what + "; nothing was imported", file_);
    }

private:
    std::int64_t number(const std::string& text) const {
        try {
            return std::stoll(text);
        } catch (const std::exception&) {
            fail("\"" + text + "\" is no number");
        }
    }
    std::string file_;
    CsvReader reader_;
    std::vector<std::string> columns_;
};

/// The numbers of the records that are called by codes, by kind and code.
using Codes = std::map<std::string, std::map<std::string, std::int64_t>>;

Codes codesOf(const Package& package) {
    Codes codes;
    for (const RecordKind& kind : recordKinds()) {
        if (!kind.coded() || !package.holds(kind)) continue;
        TableReader rows(kind, package);
        for (Record record; rows.next(record);) codes[kind.name][record.text("code")] = record.id;
    }
    return codes;
}

std::int64_t importTable(const Database& database, const RecordKind& kind, const Package& package, const Codes& codes) {
    if (!package.holds(kind)) return 0;
    TableReader rows(kind, package);
    RecordWriter writer(database, kind);
    std::int64_t count = 0;
    for (Record record; rows.next(record); ++count) {
        try {
            record.values = normalStoredValues(kind, record.values);
        } catch (const Error& error) {
            rows.fail(error.what());
        }
        for (const RecordField& field : kind.fields) {
            if (field.type != FieldType::Link || !recordKind(field.of).coded() || record.text(field.name).empty())
                continue;
            const auto& known = codes.at(field.of);
            const auto found = known.find(record.text(field.name));
            if (found == known.end())
                rows.fail("there is no " + field.of + " \"" + record.text(field.name) + "\" in this package");
            record.values[field.name] = std::to_string(found->second);
        }
        writer.add(record);
    }
    return count;
}

/// Copies the photos that the collection lists and the box files; returns how many photos are not there.
int copyFiles(const Database& database, const fs::path& package, const fs::path& folder) {
    Statement rows(database, "SELECT stored_name, content_hash FROM photo");
    rows.run();
    int lacking = 0;
    while (rows.next()) {
        const std::string name = fs::path(rows.text()).filename().string();
        const std::string hash = rows.text();
        const fs::path original = package / "photos" / name;
        if (fs::exists(original))
            copyOriginal(original, folder / "photos" / name, hash);
        else
            ++lacking;
    }
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(package / "calibration", none))
        if (entry.is_regular_file()) copyWhole(entry.path(), folder / "calibration" / entry.path().filename());
    const fs::path species = package / "species.json";
    if (fs::exists(species)) copyWhole(species, folder / "species.json");
    return lacking;
}

}  // namespace

PackageReport importPackage(const fs::path& from, const fs::path& folder) {
    const Package package = readPackage(from);
    const Codes codes = codesOf(package);
    NewFolder fresh(folder);
    PackageReport report;
    {
        Store store = Store::create(fresh.path());
        Database& database = CollectionFile::of(store);
        store.together([&] {
            checkLinksAtTheEnd(database);
            for (const RecordKind& kind : recordKinds()) report.records += importTable(database, kind, package, codes);
            for (const auto& [name, value] : package.descriptor["ringrule"]["settings"].items())
                Statement(database,
                          "INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = "
                          "excluded.value")
                    .bind(name)
                    .bind(value.get<std::string>())
                    .run();
        });
        report.photosLacking = copyFiles(database, from, fresh.path());
        database.run("PRAGMA wal_checkpoint(TRUNCATE)");
    }
    fresh.keep();
    return report;
}

}  // namespace ringrule
