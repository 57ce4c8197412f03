// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/plate_command.h"

#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "ringrule/error.h"
#include "ringrule/sheets/plate_sheet.h"

namespace ringrule::cli {
namespace {

struct PlateOptions {
    std::string size;
    std::string paper = "a4";
    std::string tone = "pale";
    std::string name;
    std::string pdf;
    std::string box;
};

std::string namedSizes() {
    std::ostringstream text;
    text << "Named sizes:\n";
    for (const NamedPlateSize& each : namedPlateSizes())
        text << "  " << each.name << " (" << each.size.widthMm << "x" << each.size.heightMm << "): " << each.use
             << '\n';
    return text.str();
}

ExitStatus makePlate(const PlateOptions& options) {
    const std::filesystem::path boxFile = options.box;
    if (std::filesystem::path(options.pdf).lexically_normal() == boxFile.lexically_normal())
        throw Error(ErrorKind::BadUse, "--pdf and --box name the same file");
    const std::string name = options.name.empty() ? boxFile.stem().string() : options.name;
    const Box box = boxForPlate(plateLayout(plateSizeOf(options.size)), name);
    PlateSheetOptions sheet;
    sheet.paper = paperNamed(options.paper);
    sheet.tone = options.tone == "dark" ? PlateTone::Dark : PlateTone::Pale;
    sheet.boxFile = boxFile.filename().string();
    const int sheets = writePlate(box, options.pdf, boxFile, sheet);
    std::cout << "Plate " << box.plate.widthMm << " x " << box.plate.heightMm << " mm on " << sheets
              << (sheets == 1 ? " sheet of " : " sheets to be joined, ") << paperName(sheet.paper)
              << ", and how to make it: " << options.pdf << "\nBox file: " << options.box
              << "\nPrint at 100 %, measure the bars with a steel rule, then: ringrule box rescale --help\n";
    return ExitStatus::Done;
}

}  // namespace

void addPlateCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<PlateOptions>();
    CLI::App* command = app.add_subcommand("plate", "Makes a scale plate to print at true scale, and its box file");
    command->add_option("--size", options->size, "Width x height in mm as in 200x120, or a name (below)")->required();
    command->add_option("--paper", options->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
    command
        ->add_option("--tone", options->tone,
                     "Ground: pale, or dark for animals that are paler than it")
        ->check(CLI::IsMember({"pale", "dark"}));
    command->add_option("--name", options->name, "What keepers call the box (default: the box file's name)");
    command->add_option("--pdf", options->pdf, "PDF file to write")->required();
    command->add_option("--box", options->box, "Box file to write; must not be there yet")->required();
    command->footer(namedSizes());
    command->callback([&chosen, options] { chosen = [options] { return makePlate(*options); }; });
}

}  // namespace ringrule::cli
