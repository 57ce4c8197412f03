// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/field_words.h"
#include "ringrule/records/package.h"
#include "ringrule/records/table_import.h"

namespace ringrule::cli {
namespace {

struct ExportOptions {
    std::string store;
    std::string out;
    std::string as = "package";
    bool noPhotos = false;
};

ExitStatus exportAll(const ExportOptions& options) {
    const Store store = Store::open(options.store);
    if (options.as == "package")
        exportPackage(store, options.out, {.photos = !options.noPhotos});
    else
        exportDarwinCore(store, options.out);
    std::cout << "Exported to " << options.out << '\n';
    return ExitStatus::Done;
}

struct ImportOptions {
    std::string from;
    std::string store;
    std::string kind;
    std::string fresh;
    std::vector<std::string> map;
    std::vector<std::string> set;
    std::string dayOrder;
    std::string keeper;
    bool write = false;
};

void printMapping(const TableImport& seen) {
    std::cout << "Column -> field (first value)\n";
    for (const ColumnUse& use : seen.columns) {
        std::cout << "  " << use.column << " -> " << (use.field.empty() ? "left out" : use.field);
        if (use.factor != 1.0) std::cout << ", times " << use.factor;
        std::string example = use.example;
        std::replace_if(
            example.begin(), example.end(), [](unsigned char c) { return c < ' '; }, ' ');
        std::cout << " (" << example << ")\n";
    }
}

ExitStatus importOne(const ImportOptions& options) {
    TableImportOptions how;
    how.fieldOfColumn = fieldWords(options.map);
    how.always = fieldWords(options.set);
    how.dayOrder = options.dayOrder == "dmy"   ? DayOrder::DayFirst
                   : options.dayOrder == "mdy" ? DayOrder::MonthFirst
                                               : DayOrder::NotTold;
    how.write = options.write;
    Store store = Store::open(options.store);
    store.setKeeper(options.keeper);
    const TableImport seen = importTable(store, options.from, options.kind, how);
    printMapping(seen);
    for (const BadRow& row : seen.bad)
        std::cerr << "ringrule: " << options.from << ": line " << row.line << ": " << row.sentence << '\n';
    std::cout << seen.rows << " rows, " << seen.bad.size() << " of them bad; " << seen.records << " records ";
    if (seen.written)
        std::cout << "were added\n";
    else if (!seen.bad.empty())
        std::cout << "are good. Nothing was written: mend the bad rows first\n";
    else
        std::cout << "would be added. Nothing was written: when the mapping is right, say --write\n";
    return seen.bad.empty() ? ExitStatus::Done : ExitStatus::NotMeasured;
}

ExitStatus importAny(const ImportOptions& options) {
    if (!options.fresh.empty()) {
        const PackageReport report = importPackage(options.from, options.fresh);
        std::cout << "A new collection with " << report.records << " records: " << options.fresh << '\n';
        if (report.photosLacking == 0) return ExitStatus::Done;
        std::cerr << "ringrule: " << report.photosLacking << " photos are not in the package; put them into "
                  << options.fresh << "/photos, then: ringrule verify\n";
        return ExitStatus::NotMeasured;
    }
    if (options.store.empty() || options.kind.empty())
        throw Error(ErrorKind::BadUse, "say --store DIR and --as KIND for a table, or --new DIR for a package");
    return importOne(options);
}

}  // namespace

void addExchangeCommands(CLI::App& app, Run& chosen) {
    auto out = std::make_shared<ExportOptions>();
    CLI::App* exporting = app.add_subcommand("export", "Writes a collection as tables that other programs read");
    exporting->add_option("--store", out->store, "Folder of the collection")->required();
    exporting->add_option("--out", out->out, "New folder to write to")->required();
    exporting->add_option("--as", out->as, "package: Frictionless Data Package; darwin-core: occurrences and measures")
        ->check(CLI::IsMember({"package", "darwin-core"}));
    exporting->add_flag("--no-photos", out->noPhotos, "A package without the originals");
    exporting->callback([&chosen, out] { chosen = [out] { return exportAll(*out); }; });

    auto in = std::make_shared<ImportOptions>();
    CLI::App* importing =
        app.add_subcommand("import", "Reads a CSV table into a collection, or a package as a new one");
    importing->add_option("FROM", in->from, "CSV table, or folder of an exported package")->required();
    CLI::Option* fresh = importing->add_option("--new", in->fresh, "Folder of the new collection, for a package");
    importing->add_option("--store", in->store, "Folder of the collection, for a table")->excludes(fresh);
    importing->add_option("--as", in->kind,
                          "Kind of record in the table, e.g. animal, hand-measure; see ringrule list");
    importing->add_option("--map", in->map, "COLUMN=FIELD where the guess is wrong; COLUMN= leaves it out");
    importing->add_option("--set", in->set, "FIELD=VALUE for every row, e.g. method=ruler");
    importing->add_option("--day-order", in->dayOrder, "dmy or mdy, for days that are not written as 2031-01-06")
        ->check(CLI::IsMember({"dmy", "mdy"}));
    importing->add_option("--keeper", in->keeper, "Initials of who does it");
    importing->add_flag("--write", in->write, "Write it; without this everything is tried and shown only");
    importing->footer("Exit status: 0 every row is good, 1 a row is bad (then nothing was written), 2 bad use.");
    importing->callback([&chosen, in] { chosen = [in] { return importAny(*in); }; });
}

}  // namespace ringrule::cli
