// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/check_command.h"

#include <iomanip>
#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/today.h"
#include "ringrule/workflow/box_checks.h"

namespace ringrule::cli {
namespace {

struct CheckOptions {
    std::string photo;
    std::string box;
    double rodMm = 0.0;
    bool flat = false;
    std::string store;
    std::string keeper;
};

std::string number(double value, int digits) {
    std::ostringstream out;
    out << std::fixed << std::setprecision(digits) << value;
    return out.str();
}

void printPlate(const PlateCheck& plate) {
    std::cout << "Plate    " << plate.markers.size() << " of " << plate.expectedMarkers << " markers, corners within "
              << number(plate.cornerRmsPx, 2) << " px (" << number(plate.cornerRmsMm, 3) << " mm) RMS\n";
    for (const MarkerResidual& marker : plate.markers)
        std::cout << "         marker " << marker.id << ": " << number(marker.rmsPx, 2) << " px\n";
    std::cout << "Camera   ";
    if (plate.tiltDegrees) {
        std::cout << number(*plate.tiltDegrees, 1) << " degrees off square";
        if (plate.cameraToWindowMm && plate.statedCameraToWindowMm)
            std::cout << ", " << number(*plate.cameraToWindowMm, 1)
                      << " mm before the window (box file: " << number(*plate.statedCameraToWindowMm, 1) << ")";
        std::cout << '\n';
    } else {
        std::cout << "place not told: no lens is known for this photo\n";
    }
}

void printRod(const RodCheck& rod) {
    std::cout << "Rod      " << number(rod.reading.lengthMm.value, 2) << " mm, interval of 95 % +-"
              << number(rod.reading.lengthMm.u95(), 2) << " (stated: " << number(rod.statedMm, 2) << "), "
              << number(rod.reading.thicknessMm, 1) << " mm thick\n";
}

void printFinding(const BoxFinding& finding) {
    std::cout << (finding.fails ? "Off      " : "Note     ") << finding.sentence << '\n';
}

void printVerdict(const BoxCheck& check) {
    if (!check.holds()) {
        std::cout << "The box does not measure true as it is.\n";
    } else if (check.rod) {
        std::cout << "The box measures true within " << number(100.0 * check.rod->trueWithin, 2) << " %.\n";
    } else {
        std::cout << "The plate is as the box file says. Whether the print is true to scale only a rod or a steel rule "
                     "can tell.\n";
    }
}

/// A photo checks a box; a collection alone is checked itself.
ExitStatus check(const CheckOptions& options) {
    if (options.photo.empty() && options.box.empty() && !options.store.empty()) return verify(options.store);
    if (options.photo.empty() || options.box.empty())
        throw Error(ErrorKind::BadUse,
                    "say PHOTO and --box FILE to check a box, or --store DIR alone for a collection");
    const Box box = readBox(options.box);
    BoxCheckOptions how;
    if (options.rodMm > 0.0) how.rodMm = options.rodMm;
    how.rodShape = options.flat ? RodShape::Flat : RodShape::Round;
    const BoxCheck result = checkBox(options.photo, box, how);
    if (!options.store.empty()) {
        BoxCheckRecord record = boxCheckRecord(result, box, options.photo, how.rodMm.has_value(), today());
        record.keeper = options.keeper;
        Store::open(options.store).addBoxCheck(record);
    }
    if (result.plate) printPlate(*result.plate);
    if (result.rod) printRod(*result.rod);
    if (result.plate) {
        for (const BoxFinding& finding : result.plate->findings) printFinding(finding);
    }
    if (result.rod && result.rod->finding) printFinding(*result.rod->finding);
    if (result.refusal) {
        std::cout.flush();
        std::cerr << "ringrule: " << options.photo << ": " << result.refusal->sentence << '\n';
        return ExitStatus::NotMeasured;
    }
    printVerdict(result);
    return result.holds() ? ExitStatus::Done : ExitStatus::NotMeasured;
}

}  // namespace

void addCheckCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<CheckOptions>();
    CLI::App* command = app.add_subcommand(
        "check", "Tells by one photo whether a box still measures true; or whether a collection is whole");
    command->add_option("PHOTO", options->photo, "Photo of the plate alone, or of a rod on the animal's plane");
    command->add_option("--box", options->box, "Box file of the measuring box");
    CLI::Option* rod = command->add_option("--rod-mm", options->rodMm, "Length of the dark straight rod in mm");
    rod->check(CLI::Range(10.0, 1000.0));
    command->add_flag("--flat", options->flat, "The rod is a flat strip, not round")->needs(rod);
    CLI::Option* store =
        command->add_option("--store", options->store, "Collection to keep the check in; alone: to read whole");
    command->add_option("--keeper", options->keeper, "Initials of who checked")->needs(store);
    command->footer("Exit status: 0 the box holds, 1 it does not or the photo cannot tell, 2 bad use or box file.");
    command->callback([&chosen, options] { chosen = [options] { return check(*options); }; });
}

}  // namespace ringrule::cli
