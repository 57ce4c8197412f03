// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule {

/// Every animal's history from the store, its photos of one session combined into one observation.
[[nodiscard]] std::vector<AnimalHistory> historiesFromStore(const Store& store);

struct SessionSummary {
    SessionId session;
    int photos = 0;
    int measured = 0;
    int refused = 0;
    std::vector<std::string> troubles;  ///< a sentence for each photo that gave no measure
};

/// Measures a folder of photos into the collection as one session: all of it, or nothing.
[[nodiscard]] SessionSummary addSessionFolder(Store& store, const std::filesystem::path& folder, const Session& session,
                                              const Box& box, int jobs, const Progress& progress = {});

/// Fills an empty store with what a house file (format "ringrule-house/1") says of tanks, diets and animals, then
/// measures each of its sessions. Throws `Error(BadData)`.
std::vector<SessionSummary> addHouse(Store& store, const std::filesystem::path& houseFile,
                                     const std::filesystem::path& calibrationFolder, int jobs,
                                     const Progress& progress = {});

}  // namespace ringrule
