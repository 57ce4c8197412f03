// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/day_option.h"
#include "cli/today.h"
#include "ringrule/records/keeper_questions.h"

namespace ringrule::cli {
namespace {

struct WhoOptions {
    std::string question;
    std::string store;
    std::string on;
    int days = 0;
};

std::vector<KeeperAnswer> answers(const Store& store, const WhoOptions& options, Date on) {
    const bool told = options.days > 0;
    if (options.question == "due") return told ? whoIsDue(store, on, options.days) : whoIsDue(store, on);
    if (options.question == "unmeasured")
        return told ? whoIsUnmeasured(store, on, options.days) : whoIsUnmeasured(store, on);
    if (options.question == "follow-up") return whoIsToFollowUp(store, on);
    if (options.question == "refusing") return told ? whoRefuses(store, on, options.days) : whoRefuses(store, on);
    return told ? whoIsOfUnknownSex(store, on, options.days) : whoIsOfUnknownSex(store, on);
}

ExitStatus who(const WhoOptions& options) {
    const auto on = dayOption("--on", options.on.empty() ? today() : options.on);
    const auto found = answers(Store::open(options.store), options, *on);
    if (found.empty()) std::cout << "Nobody.\n";
    for (const KeeperAnswer& answer : found)
        std::cout << answer.code << (answer.name.empty() ? "" : " (" + answer.name + ")") << ": " << answer.why << '\n';
    return ExitStatus::Done;
}

}  // namespace

void addWhoCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<WhoOptions>();
    CLI::App* command = app.add_subcommand(
        "who", "Answers what a keeper asks: who is due, unmeasured, refusing, unsexed, to follow up");
    command
        ->add_option("QUESTION", options->question,
                     "due: no photo for 30 days; unmeasured: no length for 42 days; refusing: food refused 3 days "
                     "running; unsexed: unknown sex at 183 days; follow-up: to be looked at again, as decided")
        ->required()
        ->check(CLI::IsMember({"due", "unmeasured", "refusing", "unsexed", "follow-up"}));
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--on", options->on, "As of this day (today unless told)");
    command->add_option("--days", options->days, "Another number of days")->check(CLI::Range(1, 100000));
    command->callback([&chosen, options] { chosen = [options] { return who(*options); }; });
}

}  // namespace ringrule::cli
