// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "ringrule/workflow/collection_review.h"

/// One demo photo with what was measured in it and what is true of it.
struct DemoPhoto {
    std::string name;  ///< e.g. "2031-01-06/above/P1-c_rendered.jpg"
    ringrule::PhotoResult result;
    nlohmann::json truth;

    /// What the measurement of the photo's one animal says; null when the photo gave none or several.
    [[nodiscard]] const ringrule::Measurement* measurement() const;
};

/// The demo, run once: every sample photo measured into a collection of its own.
struct DemoRun {
    std::vector<DemoPhoto> photos;
    std::vector<ringrule::SessionSummary> summaries;
    std::vector<ringrule::AnimalHistory> histories;
};

[[nodiscard]] const DemoRun& demoRun();
