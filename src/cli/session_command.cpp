// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/day_option.h"
#include "cli/interrupt.h"
#include "cli/repeat_table.h"
#include "cli/session_report.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule::cli {
namespace {

struct SessionOptions {
    std::string folder;
    std::string store;
    std::string box;
    std::string on;
    std::string keeper;
    std::string fed;
    std::string brood;
    int jobs = 0;
};

ExitStatus addSession(const SessionOptions& options) {
    Session session;
    session.keeper = options.keeper;
    session.folder = std::filesystem::path(options.folder).lexically_normal().string();
    if (const auto day = dayOption("--on", options.on)) session.on = *day;
    const Box box = readBox(options.box);
    Store store = Store::open(options.store);
    SessionNotes notes;
    if (!options.fed.empty()) notes.fedBefore = options.fed == "yes";
    if (!options.brood.empty()) notes.brood = BroodId{store.numberOf("brood", options.brood)};
    const SessionSummary summary =
        addSessionFolder(store, options.folder, session, box, options.jobs, terminalProgress(), {}, notes);
    keepBoxFile(store, options.box);
    printTroubles(std::cerr, summary, "ringrule: ");
    printSummary(std::cout, summary);
    const auto histories = historiesFromStore(store);
    printSession(std::cout, histories, summary.on);
    printBoxNotes(std::cout, store, summary.on);
    printRepeats(std::cout, "\nRepeats: photos of one animal on " + formatDate(summary.on) + " against each other",
                 repeatsOfDay(store, summary.on), true);
    if (!session.keeper.empty())
        printRepeats(std::cout, "\nThe same over all sessions of keeper " + session.keeper,
                     repeatsOfKeeper(store, session.keeper), false);
    return summary.troubles.empty() ? ExitStatus::Done : ExitStatus::NotMeasured;
}

}  // namespace

void addSessionCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<SessionOptions>();
    CLI::App* command = app.add_subcommand("session", "Measures a folder of photos into a collection as one session");
    command->add_option("FOLDER", options->folder, "Photos of the session; sub-folders above, front, mirror")
        ->required();
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--box", options->box, "Box file of the measuring box")->required();
    command->add_option("--on", options->on, "Day of the session, when the photos do not say it");
    command->add_option("--keeper", options->keeper, "Initials of who took the photos");
    command
        ->add_option("--fed", options->fed,
                     "Whether the animals were fed before the photos (yes, no); not told when left out")
        ->check(CLI::IsMember({"yes", "no"}));
    command->add_option("--brood", options->brood, "Code of the brood that animals without a card are a sample of");
    command->add_option("--jobs", options->jobs, "Photos measured at a time (0: one for each core)")
        ->check(CLI::Range(0, 1024));
    command->callback([&chosen, options] { chosen = [options] { return addSession(*options); }; });
}

}  // namespace ringrule::cli
