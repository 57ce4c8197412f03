// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>
#include <iostream>
#include <memory>
#include <optional>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/interrupt.h"
#include "cli/measure_json.h"
#include "cli/overlay_files.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule::cli {
namespace {

struct MeasureOptions {
    std::vector<std::string> photos;
    std::string box;
    std::string shape = "auto";
    std::string view = "auto";
    bool outline = false;
    std::string overlay;
    std::string emptyBox;
    int jobs = 0;
};

/// The photos to measure; a folder stands for the photos in it.
std::vector<PhotoTask> tasksOf(const MeasureOptions& options) {
    const std::optional<View> told = viewFromName(options.view);
    std::vector<PhotoTask> tasks;
    for (const std::string& photo : options.photos) {
        if (std::filesystem::is_directory(photo)) {
            const auto inFolder = photosOfFolder(photo);
            tasks.insert(tasks.end(), inFolder.begin(), inFolder.end());
        } else {
            tasks.push_back({photo, viewOfFolder(photo)});
        }
    }
    if (told) {
        for (PhotoTask& task : tasks) task.view = *told;
    }
    return tasks;
}

/// The photo of the empty box that was named, or that lies in the one folder that is measured.
std::shared_ptr<const EmptyBox> emptyBoxFor(const MeasureOptions& options, const Box& box) {
    if (!options.emptyBox.empty()) return readEmptyBox(options.emptyBox, box);
    if (options.photos.size() != 1 || !std::filesystem::is_directory(options.photos.front())) return nullptr;
    const auto photo = emptyBoxPhotoIn(options.photos.front());
    return photo ? readEmptyBox(*photo, box) : nullptr;
}

/// Says on standard error what is wrong with a photo that could be measured all the same.
void printNotes(const std::string& photo, const PhotoReading& reading) {
    for (const Remark remark : reading.remarks) {
        if (remark != Remark::MarkersMissing && remark != Remark::LensOtherSize && remark != Remark::SeveralCards)
            continue;
        std::cerr << "ringrule: note: " << photo << ": " << remarkSentence(remark) << '\n';
    }
}

/// Prints what one photo gave. Whether every animal in it was measured.
bool print(const PhotoResult& result, const JsonLineOptions& options) {
    const std::string photo = result.task.path.string();
    if (!result.reading) {
        std::cerr << "ringrule: " << result.errorMessage << '\n';
        return false;
    }
    const PhotoReading& reading = *result.reading;
    if (reading.refusal) {
        std::cout << refusedPhotoLine(photo, reading, options) << '\n';
        std::cerr << "ringrule: " << photo << ": " << reading.refusal->sentence << '\n';
        return false;
    }
    printNotes(photo, reading);
    bool all = !reading.animals.empty();
    for (const AnimalReading& animal : reading.animals) {
        std::cout << animalLine(photo, reading, animal, options) << '\n';
        if (animal.measurement.measured()) continue;
        all = false;
        std::cerr << "ringrule: " << photo << ": "
                  << (animal.measurement.refusal ? animal.measurement.refusal->sentence
                                                 : std::string("the animal could not be measured"))
                  << '\n';
    }
    return all;
}

ExitStatus measure(const MeasureOptions& options) {
    const Box box = readBox(options.box);
    const std::vector<PhotoTask> tasks = tasksOf(options);
    PhotoOptions photoOptions;
    photoOptions.shape = shapeFromName(options.shape).value_or(Shape::Unknown);
    photoOptions.emptyBox = emptyBoxFor(options, box);
    const JsonLineOptions lineOptions{options.outline};
    std::optional<OverlayFiles> overlays;
    if (!options.overlay.empty()) overlays.emplace(options.overlay);
    bool all = true;
    const auto onResult = [&](const PhotoResult& result) {
        all = print(result, lineOptions) && all;
        std::cout.flush();
        if (overlays && result.reading) overlays->write(*result.reading);
    };
    static_cast<void>(measurePhotos(tasks, box, photoOptions, options.jobs, terminalProgress(), onResult));
    return all ? ExitStatus::Done : ExitStatus::NotMeasured;
}

}  // namespace

void addMeasureCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<MeasureOptions>();
    CLI::App* command = app.add_subcommand("measure", "Measures animals in photos; one JSON object a line");
    command->add_option("PHOTO", options->photos, "Photos (JPEG, PNG), or folders of photos")->required();
    command->add_option("--box", options->box, "Box file of the measuring box")->required();
    command->add_option("--shape", options->shape, "What the animals are (auto: told from the outline)")
        ->check(CLI::IsMember({"auto", "pipefish", "seahorse", "fish"}));
    command->add_option("--view", options->view, "What the photos show (auto: by the folder's name, else side)")
        ->check(CLI::IsMember({"auto", "side", "front", "above", "mirror"}));
    command->add_option("--empty-box", options->emptyBox,
                        "Photo of the box without animals: its stains and print are then no animals "
                        "(else the one in the folder's sub-folder empty)");
    command->add_flag("--outline", options->outline, "Print the outline's points too");
    command->add_option("--overlay", options->overlay,
                        "Folder for pictures of each photo with its outline and measures");
    command->add_option("--jobs", options->jobs, "Photos measured at a time (0: one for each core)")
        ->check(CLI::Range(0, 1024));
    command->callback([&chosen, options] { chosen = [options] { return measure(*options); }; });
}

}  // namespace ringrule::cli
