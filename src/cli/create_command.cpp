// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/interrupt.h"
#include "cli/session_report.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule::cli {
namespace {

struct CreateOptions {
    std::string folder;
    std::string photos;
    std::string house;
    std::string calibration;
    int jobs = 0;
};

/// A collection in a folder, or one whose database is on a server.
Store createAt(const CreateOptions& options) {
    const bool shared = options.folder.find("://") != std::string::npos;
    if (!shared && options.photos.empty()) return Store::create(options.folder);
    if (!shared || options.photos.empty())
        throw Error(ErrorKind::BadUse,
                    "a shared collection needs the address of its database and a folder that every workstation sees: "
                    "ringrule create postgresql://USER@HOST/DATABASE --photos DIR");
    return Store::createShared(options.folder, options.photos);
}

ExitStatus create(const CreateOptions& options) {
    if (options.house.empty()) {
        static_cast<void>(createAt(options));
        std::cout << "A new collection: " << options.folder << '\n';
        return ExitStatus::Done;
    }
    checkHouse(options.house, options.calibration);
    Store store = createAt(options);
    const auto summaries = addHouse(store, options.house, options.calibration, options.jobs, terminalProgress());
    bool troubles = false;
    for (const SessionSummary& summary : summaries) {
        printTroubles(std::cerr, summary, "ringrule: ");
        printSummary(std::cout, summary);
        troubles = troubles || !summary.troubles.empty();
    }
    return troubles ? ExitStatus::NotMeasured : ExitStatus::Done;
}

}  // namespace

void addCreateCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<CreateOptions>();
    CLI::App* command = app.add_subcommand("create", "Makes a new collection, empty or from a house file");
    command
        ->add_option("DIR", options->folder,
                     "Folder of the new collection; for one that several workstations share the address of an empty "
                     "PostgreSQL database, postgresql://USER@HOST/DATABASE")
        ->required();
    command->add_option("--photos", options->photos,
                        "Folder of a shared collection, which every workstation sees: photos, box files, backups");
    CLI::Option* house = command->add_option("--house", options->house, "House file: tanks, diets, animals, sessions");
    CLI::Option* calibration =
        command->add_option("--calibration", options->calibration, "Folder of the box files that the house file names");
    house->needs(calibration);
    calibration->needs(house);
    command->add_option("--jobs", options->jobs, "Photos measured at a time (0: one for each core)")
        ->check(CLI::Range(0, 1024));
    command->callback([&chosen, options] { chosen = [options] { return create(*options); }; });
}

}  // namespace ringrule::cli
