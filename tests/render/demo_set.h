// SPDX-License-Identifier: GPL-3.0-or-later
// The demo photos: nine monthly sessions at an aquarium that does not exist.
#pragma once

#include "demo_animals.h"

#include <filesystem>
#include <functional>

namespace render {

struct DemoPhoto {
    Scene scene;
    std::filesystem::path photo;  // relative to the folder of the demo set
    std::filesystem::path truth;
};

// All photos of one session in the order in which they were taken.
std::vector<DemoPhoto> demoSessionPhotos(std::size_t session, const Box& box);

// Renders every session into the folder and writes house.json there; `done` is told each photo.
void renderDemoSet(const std::filesystem::path& folder, const Box& box,
                   const std::function<void(const DemoPhoto&)>& done);

// Husbandry of the invented house ("ringrule-house/1"): no measures, no truth.
void writeHouse(const std::filesystem::path& file);

}  // namespace render
