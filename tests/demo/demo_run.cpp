// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo_run.h"

#include <fstream>

#include "../scratch_folder.h"

namespace {

const std::filesystem::path kSource(RINGRULE_SOURCE_DIR);

nlohmann::json truthOf(const std::filesystem::path& photo) {
    const auto day = photo.begin()->string();
    std::ifstream in(kSource / "sample_images/truth" / day / (photo.stem().string() + ".json"));
    return nlohmann::json::parse(in);
}

DemoRun run() {
    const ScratchFolder scratch;
    auto store = ringrule::Store::create(scratch / "house");
    DemoRun demo;
    demo.summaries = ringrule::addHouse(store, kSource / "sample_images/house.json", kSource / "calibration", 2, {},
                                        [&](const ringrule::PhotoResult& result) {
                                            const auto name =
                                                result.task.path.lexically_relative(kSource / "sample_images");
                                            demo.photos.push_back({name.string(), result, truthOf(name)});
                                        });
    demo.histories = ringrule::historiesFromStore(store);
    return demo;
}

}  // namespace

const ringrule::Measurement* DemoPhoto::measurement() const {
    if (!result.reading || result.reading->animals.size() != 1) return nullptr;
    return &result.reading->animals.front().measurement;
}

const DemoRun& demoRun() {
    static const DemoRun demo = run();
    return demo;
}
