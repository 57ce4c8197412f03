// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/day_option.h"
#include "cli/measured_collection.h"
#include "cli/session_report.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/session_table.h"
#include "ringrule/workflow/species_file.h"

namespace ringrule::cli {
namespace {

struct ReviewOptions {
    std::string store;
    std::string on;
};

ExitStatus review(const ReviewOptions& options) {
    const auto day = dayOption("--on", options.on);
    const auto measured = openMeasured(options.store);
    if (!measured) return ExitStatus::Done;
    const auto& [store, histories, days] = *measured;
    Date on = days.back();
    if (day) {
        const auto after = std::upper_bound(days.begin(), days.end(), *day);
        if (after == days.begin()) {
            throw Error(ErrorKind::BadUse, "nothing was measured on or before " + options.on +
                                               "; the first session is " + formatDate(days.front()));
        }
        on = *std::prev(after);
    }
    const auto findings = reviewCollection(store, histories, on, speciesOfCollection(store.folder()).rules);
    printSession(std::cout, histories, on, findings);
    printBoxNotes(std::cout, store, on);
    printFindings(std::cout, on, findings);
    return ExitStatus::Done;
}

}  // namespace

void addReviewCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<ReviewOptions>();
    CLI::App* command = app.add_subcommand("review", "Says which animals of a collection need a look, and why");
    command->add_option("--store", options->store, "Folder of the collection")->required();
    command->add_option("--on", options->on, "As it was after the last session up to this day");
    command->callback([&chosen, options] { chosen = [options] { return review(*options); }; });
}

}  // namespace ringrule::cli
