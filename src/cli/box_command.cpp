// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/box_command.h"

#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/today.h"
#include "ringrule/optics/box_writer.h"
#include "ringrule/optics/water.h"

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
    const RescaledPlate plate = rescaleBoxFile(options.box, scale, today());
    std::cout << options.box << ": printed at " << 100.0 * scale.across << " % across and " << 100.0 * scale.down
              << " % down; the plate is " << plate.widthMm << " x " << plate.heightMm << " mm\n";
    if (plate.before.across != 1.0 || plate.before.down != 1.0)
        std::cout << "This replaces an earlier correction (" << 100.0 * plate.before.across << " % and "
                  << 100.0 * plate.before.down << " %)\n";
    return ExitStatus::Done;
}

struct WaterOptions {
    std::string box;
    Media media;
};

ExitStatus setWater(const WaterOptions& options) {
    writeMedia(options.media, options.box);
    const Media& media = options.media;
    std::cout << options.box << ": camera " << media.cameraToWindowMm << " mm before the window, "
              << media.waterToPlateMm << " mm of water of index " << waterIndex(media.salinityPpt, media.temperatureC)
              << " behind it\n";
    return ExitStatus::Done;
}

struct PlaneOptions {
    std::string box;
    AnimalPlane plane;
};

ExitStatus setPlane(const PlaneOptions& options) {
    writeAnimalPlane(options.plane, options.box);
    std::cout << options.box << ": the animal's middle is " << options.plane.distanceFromPlateMm << " +- "
              << options.plane.toleranceMm << " mm before the plate\n";
    return ExitStatus::Done;
}

void addWaterCommand(CLI::App& box, Run& chosen) {
    auto options = std::make_shared<WaterOptions>();
    Media& media = options->media;
    CLI::App* command = box.add_subcommand("water", "States window, water and distances of a box");
    command->add_option("--box", options->box, "Box file to change")->required();
    command->add_option("--camera-to-window-mm", media.cameraToWindowMm, "Lens's opening to the window's outer face")
        ->required();
    command->add_option("--window-mm", media.windowThicknessMm, "Thickness of the window; 0: the water's surface")
        ->required();
    command->add_option("--window-index", media.windowIndex, "Its refractive index: acrylic 1.49, glass 1.52")
        ->default_val(1.49);
    command->add_option("--water-to-plate-mm", media.waterToPlateMm, "Window's inner face to the plate")->required();
    command->add_option("--salinity-ppt", media.salinityPpt, "Salinity")->required();
    command->add_option("--temperature-c", media.temperatureC, "Temperature")->required();
    command->callback([&chosen, options] { chosen = [options] { return setWater(*options); }; });
}

void addPlaneCommand(CLI::App& box, Run& chosen) {
    auto options = std::make_shared<PlaneOptions>();
    CLI::App* command = box.add_subcommand("plane", "States where the animal is before the plate");
    command->add_option("--box", options->box, "Box file to change")->required();
    command
        ->add_option("--distance-mm", options->plane.distanceFromPlateMm,
                     "Plate's face to the middle of the animal's body")
        ->required();
    command->add_option("--tolerance-mm", options->plane.toleranceMm, "How far from that it may be, either way")
        ->required()
        ->check(CLI::PositiveNumber);
    command->callback([&chosen, options] { chosen = [options] { return setPlane(*options); }; });
}

void addRescaleCommand(CLI::App& box, Run& chosen) {
    auto options = std::make_shared<RescaleOptions>();
    CLI::App* command = box.add_subcommand("rescale", "Corrects the plate for what the printer made of it");
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

}  // namespace

void addBoxCommand(CLI::App& app, Run& chosen) {
    CLI::App* box = app.add_subcommand("box", "Works on a box file");
    box->require_subcommand(1);
    addBoxSetupCommand(*box, chosen);
    addRescaleCommand(*box, chosen);
    addWaterCommand(*box, chosen);
    addPlaneCommand(*box, chosen);
}

}  // namespace ringrule::cli
