// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/day_option.h"
#include "ringrule/records/store.h"

namespace ringrule::cli {
namespace {

struct LogOptions {
    std::string store;
    std::string of;
    std::string since;
    std::int64_t number = 0;
    std::string keeper;
};

void print(const Change& change) {
    std::cout << change.id << "  " << change.at << "  " << (change.who.empty() ? "-" : change.who) << "  "
              << change.what << ' ' << change.subject;
    if (change.undoes) std::cout << " (change " << *change.undoes << ")";
    if (!change.before.empty() || !change.after.empty()) std::cout << ": ";
    if (!change.before.empty()) std::cout << change.before << " -> ";
    std::cout << change.after << '\n';
}

ExitStatus log(const LogOptions& options) {
    static_cast<void>(dayOption("--since", options.since));
    const Store store = Store::open(options.store);
    for (const Change& change : store.changes()) {
        if (!options.of.empty() && change.subject != options.of) continue;
        if (change.at < options.since) continue;
        print(change);
    }
    return ExitStatus::Done;
}

ExitStatus undo(const LogOptions& options) {
    Store store = Store::open(options.store);
    store.setKeeper(options.keeper);
    store.undo(options.number);
    const auto changes = store.changes();
    const auto own = std::find_if(changes.rbegin(), changes.rend(),
                                  [&](const Change& change) { return change.undoes == options.number; });
    if (own != changes.rend()) print(*own);
    return ExitStatus::Done;
}

}  // namespace

void addLogCommands(CLI::App& app, Run& chosen) {
    auto shown = std::make_shared<LogOptions>();
    CLI::App* logging = app.add_subcommand("log", "Lists who changed what, when, from what to what");
    logging->add_option("--store", shown->store, "Folder of the collection")->required();
    logging->add_option("--of", shown->of, "Of one record only, e.g. \"animal P4\" or \"feeding 12\"");
    logging->add_option("--since", shown->since, "From this day on (UTC)");
    logging->callback([&chosen, shown] { chosen = [shown] { return log(*shown); }; });

    auto taken = std::make_shared<LogOptions>();
    CLI::App* undoing = app.add_subcommand("undo", "Takes one change back; the log keeps both");
    undoing->add_option("NUMBER", taken->number, "Number of the change, as log shows it")->required();
    undoing->add_option("--store", taken->store, "Folder of the collection")->required();
    undoing->add_option("--keeper", taken->keeper, "Initials of who does it");
    undoing->callback([&chosen, taken] { chosen = [taken] { return undo(*taken); }; });
}

}  // namespace ringrule::cli
