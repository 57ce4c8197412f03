// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/box_command.h"

#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "ringrule/optics/box_writer.h"

namespace ringrule::cli {
namespace {

struct RescaleOptions {
    std::string box;
    double statedMm = 0.0;
    double measuredMm = 0.0;
    double downStatedMm = 0.0;
    double downMeasuredMm = 0.0;
};

ExitStatus rescale(const RescaleOptions& options) {
    PrintScale scale;
    scale.across = options.measuredMm / options.statedMm;
    scale.down = options.downStatedMm > 0.0 ? options.downMeasuredMm / options.downStatedMm : scale.across;
    const RescaledPlate plate = rescaleBoxFile(options.box, scale);
    std::cout << options.box << ": printed at " << 100.0 * scale.across << " % across and " << 100.0 * scale.down
              << " % down; the plate is " << plate.widthMm << " x " << plate.heightMm << " mm\n";
    if (plate.before.across != 1.0 || plate.before.down != 1.0)
        std::cout << "This replaces an earlier correction (" << 100.0 * plate.before.across << " % and "
                  << 100.0 * plate.before.down << " %)\n";
    return ExitStatus::Done;
}

}  // namespace

void addBoxCommand(CLI::App& app, Run& chosen) {
    CLI::App* box = app.add_subcommand("box", "Works on a box file");
    box->require_subcommand(1);
    auto options = std::make_shared<RescaleOptions>();
    CLI::App* command = box->add_subcommand("rescale", "Corrects the plate for what the printer made of it");
    const auto length = CLI::Range(10.0, 2000.0);
    command->add_option("--box", options->box, "Box file to correct")->required();
    command->add_option("--bar-stated", options->statedMm, "Length that the bar across states, in mm")
        ->required()
        ->check(length);
    command->add_option("--bar-measured", options->measuredMm, "Its length by a steel rule, in mm")
        ->required()
        ->check(length);
    CLI::Option* stated = command->add_option("--down-stated", options->downStatedMm, "The same of the bar down …");
    CLI::Option* measured =
        command->add_option("--down-measured", options->downMeasuredMm, "… (default: scaled as the bar across)");
    stated->check(length)->needs(measured);
    measured->check(length)->needs(stated);
    command->footer("A correction replaces an earlier one: lengths are always those stated on the sheet or the plate.");
    command->callback([&chosen, options] { chosen = [options] { return rescale(*options); }; });
}

}  // namespace ringrule::cli
