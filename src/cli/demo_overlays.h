// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule::cli {

/// Draws the demo's photos with their measures, a folder for each day, while others are still being measured.
class DemoOverlays {
public:
    /// `which`: "none", "newest" (the last day only) or "all".
    DemoOverlays(const Store& store, std::filesystem::path folder, std::string which)
        : store_(store), folder_(std::move(folder)), which_(std::move(which)) {}

    /// Photos come session after session.
    void take(const PhotoResult& result);
    void finish();

private:
    void draw();

    const Store& store_;
    std::filesystem::path folder_;
    std::string which_;
    std::string day_;
    std::vector<PhotoReading> waiting_;  ///< of `day_`, not drawn yet
};

}  // namespace ringrule::cli
