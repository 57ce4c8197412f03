// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/interrupt.h"
#include "cli/session_report.h"
#include "ringrule/workflow/measure_again.h"

namespace ringrule::cli {
namespace {

constexpr const char* kWhat =
    "Measures a session's stored photos again: with another box file, or for animals added since";

struct AgainCommand {
    std::int64_t session = 0;
    std::string store;
    std::string box;
    AgainOptions how;
};

void printDone(const AgainSummary& summary) {
    std::cout << "Measures: replaced " << summary.corrected << ", added " << summary.added << ", as before "
              << summary.same << ", left as a person corrected them " << summary.left << "; given to an animal by card "
              << summary.given << '\n';
    if (summary.firstChange == 0) return;
    std::cout << "In the log: ";
    if (summary.firstChange == summary.lastChange)
        std::cout << "change " << summary.firstChange;
    else
        std::cout << "changes " << summary.firstChange << " to " << summary.lastChange;
    std::cout << "; to take one back: ringrule undo NUMBER\n";
}

ExitStatus measureAgain(const AgainCommand& command) {
    Store store = Store::open(command.store);
    const SessionId session{command.session};
    const std::filesystem::path boxFile =
        command.box.empty() ? boxFileOf(store, session) : std::filesystem::path(command.box);
    const Box box = readBox(boxFile);
    const AgainSummary summary = measureSessionAgain(store, session, box, command.how, terminalProgress());
    if (!command.box.empty()) keepBoxFile(store, boxFile);
    printTroubles(std::cerr, summary.session, "ringrule: ");
    if (summary.left > 0)
        std::cerr << "ringrule: " << summary.left
                  << (summary.left == 1 ? " measure that a person corrected was left as it is"
                                        : " measures that a person corrected were left as they are")
                  << "; with --corrected-too what was moved or drawn by hand is measured again as well\n";
    printSummary(std::cout, summary.session);
    printDone(summary);
    printSession(std::cout, historiesFromStore(store), summary.session.on);
    printBoxNotes(std::cout, store, summary.session.on);
    return summary.session.troubles.empty() && summary.left == 0 ? ExitStatus::Done : ExitStatus::NotMeasured;
}

}  // namespace

void addMeasureAgainCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<AgainCommand>();
    CLI::App* command = app.add_subcommand("measure-again", kWhat);
    command->add_option("SESSION", options->session, "Number of the session, as list session shows it")->required();
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--box", options->box, "Box file to measure with (left out: the one that the session had)");
    command->add_flag("--corrected-too", options->how.correctedToo,
                      "Measures again what a person corrected, too; what they moved or drew is kept");
    command->add_option("--keeper", options->how.keeper, "Initials of who does it");
    command->add_option("--jobs", options->how.jobs, "Photos measured at a time (0: one for each core)")
        ->check(CLI::Range(0, 1024));
    command->callback([&chosen, options] { chosen = [options] { return measureAgain(*options); }; });
}

}  // namespace ringrule::cli
