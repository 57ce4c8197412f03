// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/overlay_files.h"

#include "ringrule/error.h"
#include "ringrule/sheets/overlay.h"

namespace ringrule::cli {

void makeResultFolder(const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error) throw Error(ErrorKind::BadUse, "the folder cannot be made (" + error.message() + ")", folder.string());
}

std::filesystem::path OverlayFiles::freeName(const std::filesystem::path& photo) {
    const std::string stem = photo.stem().string();
    std::filesystem::path file = folder_ / (stem + "_overlay.png");
    for (int number = 2; !taken_.insert(file).second; ++number) {
        file = folder_ / (stem + "_" + std::to_string(number) + "_overlay.png");
    }
    return file;
}

void OverlayFiles::write(const PhotoReading& reading, const std::map<int, std::string>& labels) {
    if (reading.animals.empty()) return;
    makeResultFolder(folder_);
    std::vector<OverlayAnimal> animals;
    for (const AnimalReading& animal : reading.animals) {
        const auto label = animal.card ? labels.find(*animal.card) : labels.end();
        std::string name = label != labels.end() ? label->second : "";
        if (name.empty() && animal.card) name = "card " + std::to_string(*animal.card);
        animals.push_back({animal.outline, animal.anatomy, animal.measurement, name});
    }
    writeOverlayPng(reading.path, animals, freeName(reading.path));
}

}  // namespace ringrule::cli
