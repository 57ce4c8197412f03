// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iostream>
#include <optional>
#include <string>

#include <CLI/CLI.hpp>

#include "cli/box_command.h"
#include "cli/cards_command.h"
#include "cli/check_command.h"
#include "cli/collection_commands.h"
#include "cli/command.h"
#include "cli/interrupt.h"
#include "cli/judgement_commands.h"
#include "cli/lens_command.h"
#include "cli/plate_command.h"
#include "ringrule/imaging/memory.h"

namespace {

using ringrule::cli::ExitStatus;

void addCommands(CLI::App& app, ringrule::cli::Run& chosen) {
    app.set_version_flag("--version", "ringrule " RINGRULE_VERSION);
    app.require_subcommand(1);
    app.footer(
        "Help on a command: ringrule COMMAND --help\n"
        "Exit status: 0 done, 1 a photo is bad or an animal not measured, 2 bad use, box or collection.");
    ringrule::cli::addMeasureCommand(app, chosen);
    ringrule::cli::addCreateCommand(app, chosen);
    ringrule::cli::addSessionCommand(app, chosen);
    ringrule::cli::addMeasureAgainCommand(app, chosen);
    ringrule::cli::addReviewCommand(app, chosen);
    ringrule::cli::addDemoCommand(app, chosen);
    ringrule::cli::addPlateCommand(app, chosen);
    ringrule::cli::addCardsCommand(app, chosen);
    ringrule::cli::addBoxCommand(app, chosen);
    ringrule::cli::addLensCommand(app, chosen);
    ringrule::cli::addCheckCommand(app, chosen);
    ringrule::cli::addRecordCommands(app, chosen);
    ringrule::cli::addLogCommands(app, chosen);
    ringrule::cli::addWhoCommand(app, chosen);
    ringrule::cli::addSpeciesCommand(app, chosen);
    ringrule::cli::addMilestonesCommand(app, chosen);
    ringrule::cli::addDietsCommand(app, chosen);
    ringrule::cli::addNoticeCommand(app, chosen);
    ringrule::cli::addSafetyCommands(app, chosen);
    ringrule::cli::addExchangeCommands(app, chosen);
}

ExitStatus runChosen(const ringrule::cli::Run& chosen) {
    const ExitStatus status = chosen();
    std::cout.flush();
    if (!std::cout) {
        throw ringrule::Error(ringrule::ErrorKind::NoSpace, "the results could not be written to standard output");
    }
    return status;
}

/// The first word of the command line when it names no command.
std::optional<std::string> strangeCommand(const CLI::App& app, const char* firstWord) {
    if (firstWord == nullptr || firstWord[0] == '-') return std::nullopt;
    const std::string word = firstWord;
    const bool known = !app.get_subcommands([&](const CLI::App* one) { return one->get_name() == word; }).empty();
    return known ? std::nullopt : std::optional(word);
}

/// One line, with the command whose help says more.
ExitStatus tellBadUse(const CLI::App& app, const CLI::ParseError& error, const char* firstWord) {
    const auto strange = strangeCommand(app, firstWord);
    std::string words = strange ? "there is no command '" + *strange + "'" : error.what();
    std::replace(words.begin(), words.end(), '\n', ' ');
    std::cerr << "ringrule: " << words << "; see: ringrule";
    for (auto parsed = app.get_subcommands(); !parsed.empty(); parsed = parsed.front()->get_subcommands())
        std::cerr << ' ' << parsed.front()->get_name();
    std::cerr << " --help\n";
    return ExitStatus::BadInput;
}

}  // namespace

// NOLINTNEXTLINE(bugprone-exception-escape): only writing the last message itself could still throw
int main(int argc, char** argv) {
    ringrule::keepLargePagesMapped();
    ringrule::cli::listenForInterrupt();
    CLI::App app("Measures seahorses and pipefish from photographs, keeps the measures, and says who needs a look.",
                 "ringrule");
    ringrule::cli::Run chosen;
    try {
        addCommands(app, chosen);
        app.parse(argc, argv);
        return static_cast<int>(runChosen(chosen));
    } catch (const CLI::ParseError& error) {
        if (error.get_exit_code() != 0) return static_cast<int>(tellBadUse(app, error, argc > 1 ? argv[1] : nullptr));
        app.exit(error);  // --help or --version
        return static_cast<int>(ExitStatus::Done);
    } catch (const ringrule::Error& error) {
        std::cerr << "ringrule: " << error.what() << '\n';
        return static_cast<int>(ringrule::cli::exitStatusOf(error.kind()));
    } catch (const std::exception& error) {
        std::cerr << "ringrule: a fault of Ringrule itself (" << error.what() << "); please report it\n";
        return static_cast<int>(ExitStatus::Fault);
    }
}
