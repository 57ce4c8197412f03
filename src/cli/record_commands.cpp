// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>
#include <iostream>
#include <memory>
#include <utility>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/field_words.h"
#include "ringrule/records/record_search.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule::cli {
namespace {

struct RecordOptions {
    std::string store;
    std::string kind;
    std::string which;
    std::vector<std::string> words;
    std::int64_t rowVersion = 0;
    std::string keeper;
};

/// The record that a code or a number means.
Record find(const Store& store, const RecordOptions& options) {
    std::int64_t id = 0;
    const char* const end = options.which.data() + options.which.size();
    const bool coded = recordKind(options.kind).coded();
    if (!coded && std::from_chars(options.which.data(), end, id).ptr != end)
        throw Error(ErrorKind::BadUse, "a " + options.kind + " is told by its number; see ringrule list");
    if (coded) id = store.numberOf(options.kind, options.which);
    const auto record = store.record(options.kind, id);
    if (!record) throw Error(ErrorKind::BadData, "there is no " + options.kind + " " + options.which);
    return *record;
}

/// The last change of this record by this keeper: another keeper may have changed another record since.
std::int64_t lastChange(const Store& store, const RecordOptions& options, std::int64_t id) {
    std::int64_t last = 0;
    const RecordValues those{{"kind", options.kind}, {"row_id", std::to_string(id)}, {"who", options.keeper}};
    eachRecordWith(store, "change", those, [&](const Record& change) { last = change.id; });
    return last;
}

Store openAs(const RecordOptions& options) {
    Store store = Store::open(options.store);
    store.setKeeper(options.keeper);
    return store;
}

ExitStatus addOne(const RecordOptions& options) {
    Store store = openAs(options);
    RecordValues values = fieldWords(options.words);
    if (!options.keeper.empty() && recordKind(options.kind).field("keeper") != nullptr)
        values.try_emplace("keeper", options.keeper);
    const std::int64_t id = store.addRecord(options.kind, values);
    std::cout << "Added " << options.kind << ' ' << id << '\n';
    return ExitStatus::Done;
}

ExitStatus changeOne(const RecordOptions& options) {
    Store store = openAs(options);
    const Record record = find(store, options);
    const std::int64_t before = lastChange(store, options, record.id);
    store.changeRecord(options.kind, record.id, options.rowVersion != 0 ? options.rowVersion : record.version,
                       fieldWords(options.words));
    const std::int64_t change = lastChange(store, options, record.id);
    if (change == before)
        std::cout << "Nothing was to be changed: " << options.kind << ' ' << options.which << " says so already\n";
    else
        std::cout << "Changed " << options.kind << ' ' << options.which << "; to take it back: ringrule undo " << change
                  << '\n';
    return ExitStatus::Done;
}

ExitStatus removeOne(const RecordOptions& options) {
    Store store = openAs(options);
    const Record record = find(store, options);
    store.removeRecord(options.kind, record.id, options.rowVersion != 0 ? options.rowVersion : record.version);
    std::cout << "Removed " << options.kind << ' ' << options.which << "; to take it back: ringrule undo "
              << lastChange(store, options, record.id) << '\n';
    return ExitStatus::Done;
}

void listKinds() {
    for (const RecordKind& kind : recordKinds()) {
        std::cout << kind.name << ": " << kind.title << '\n';
        if (kind.use != RecordUse::Kept) continue;
        for (const RecordField& field : kind.fields) {
            std::cout << "    " << field.name << (field.required && field.otherwise.empty() ? " (needed)" : "") << ": "
                      << field.title;
            if (field.type == FieldType::Choice) std::cout << "; one of: " << field.of.substr(0, field.of.size() - 1);
            if (!field.unit.empty()) std::cout << " [" << field.unit << "]";
            std::cout << '\n';
        }
    }
}

ExitStatus list(const RecordOptions& options) {
    if (options.kind.empty()) {
        listKinds();
        return ExitStatus::Done;
    }
    if (options.store.empty()) throw Error(ErrorKind::BadUse, "say which collection to list (--store DIR)");
    const RecordKind& kind = recordKind(options.kind);
    const Store store = Store::open(options.store);
    std::string head = "number,row_version";
    for (const RecordField& field : kind.fields) head += ',' + field.name;
    head += "\r\n";
    // Printed once it is known that the words can be fields.
    const auto printHead = [&head] { std::cout << std::exchange(head, {}); };
    eachRecordWith(store, options.kind, fieldWords(options.words), [&](const Record& record) {
        printHead();
        std::cout << record.id << ',' << record.version;
        for (const RecordField& field : kind.fields) {
            const std::string value = record.text(field.name);
            std::cout << ',' << (field.type == FieldType::Number ? value : csvField(value));
        }
        std::cout << "\r\n";
    });
    printHead();
    return ExitStatus::Done;
}

CLI::App* command(CLI::App& app, const std::string& name, const std::string& what, RecordOptions& options) {
    CLI::App* made = app.add_subcommand(name, what);
    made->add_option("KIND", options.kind, "Kind of record, e.g. animal, feeding, water; see ringrule list")
        ->required();
    made->add_option("--store", options.store, "Folder of the collection")->required();
    made->add_option("--keeper", options.keeper, "Initials of who does it");
    return made;
}

}  // namespace

void addRecordCommands(CLI::App& app, Run& chosen) {
    auto add = std::make_shared<RecordOptions>();
    CLI::App* adding = command(app, "add", "Adds a record: an animal, what it ate, a water reading …", *add);
    adding->add_option("NAME=VALUE", add->words, "Its fields, e.g. animal=P4 on_day=2031-03-01")->required();
    adding->callback([&chosen, add] { chosen = [add] { return addOne(*add); }; });

    auto change = std::make_shared<RecordOptions>();
    CLI::App* changing = command(app, "change", "Changes fields of a record", *change);
    changing->add_option("WHICH", change->which, "Its code, or its number where it has none")->required();
    changing->add_option("NAME=VALUE", change->words, "Fields to change; NAME= empties one")->required();
    changing->add_option("--row-version", change->rowVersion, "As list showed it: refuse if it was changed since");
    changing->callback([&chosen, change] { chosen = [change] { return changeOne(*change); }; });

    auto remove = std::make_shared<RecordOptions>();
    CLI::App* removing = command(app, "remove", "Takes a record out; undo puts it back", *remove);
    removing->add_option("WHICH", remove->which, "Its code, or its number where it has none")->required();
    removing->add_option("--row-version", remove->rowVersion, "As list showed it: refuse if it was changed since");
    removing->callback([&chosen, remove] { chosen = [remove] { return removeOne(*remove); }; });

    auto listed = std::make_shared<RecordOptions>();
    CLI::App* listing =
        app.add_subcommand("list", "Lists records as CSV; without KIND: what kinds and fields there are");
    listing->add_option("KIND", listed->kind, "Kind of record");
    listing->add_option("NAME=VALUE", listed->words,
                        "Only those whose fields are so, e.g. animal=P4; NAME= for those where it is empty");
    listing->add_option("--store", listed->store, "Folder of the collection");
    listing->callback([&chosen, listed] { chosen = [listed] { return list(*listed); }; });
}

}  // namespace ringrule::cli
