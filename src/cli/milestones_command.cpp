// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/day_option.h"
#include "cli/judgement_commands.h"
#include "cli/measured_collection.h"
#include "ringrule/error.h"
#include "ringrule/judge/milestones.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/session_table.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule::cli {
namespace {

struct MilestoneOptions {
    std::string store;
    std::string on;
    bool all = false;
};

ExitStatus milestones(const MilestoneOptions& options) {
    const auto day = dayOption("--on", options.on);
    const auto measured = openMeasured(options.store);
    if (!measured) return ExitStatus::Done;
    const auto& [store, histories, days] = *measured;
    const Date on = day.value_or(days.back());
    const SpeciesFile species = speciesOfCollection(store.folder());
    std::cout << "Milestones as of " << formatDate(on) << " (95 % intervals; milestones: " << species.from << ")\n";
    bool any = false;
    for (const MilestoneDate& date : milestonesOf(histories, on, species.facts, species.rules.usual)) {
        if (date.reached && !options.all) continue;
        any = true;
        std::cout << "  " << date.sentence << '\n';
    }
    if (!any) std::cout << "  None is still to come.\n";
    return ExitStatus::Done;
}

}  // namespace

void addMilestonesCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<MilestoneOptions>();
    CLI::App* command = app.add_subcommand(
        "milestones", "Tells when animals reach the milestones of their species: larger food, sexing, the next tank");
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--on", options->on, "As of this day (the last session unless told)");
    command->add_flag("--all", options->all, "Those already reached as well");
    command->callback([&chosen, options] { chosen = [options] { return milestones(*options); }; });
}

}  // namespace ringrule::cli
