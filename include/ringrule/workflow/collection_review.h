// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "ringrule/judge/finding.h"
#include "ringrule/judge/judge_rules.h"
#include "ringrule/records/store.h"
#include "ringrule/workflow/measure_session.h"

namespace ringrule {

/// Every animal's history from the store, its accepted photos of one session combined into one observation.
[[nodiscard]] std::vector<AnimalHistory> historiesFromStore(const Store& store);

/// Everything that stands out after the session of `on`: animals, each species by its own thresholds, and whole tanks.
[[nodiscard]] std::vector<Finding> reviewCollection(const Store& store, std::span<const AnimalHistory> histories,
                                                    Date on, const JudgeRules& rules);

struct SessionSummary {
    SessionId session;
    Date on;
    int photos = 0;
    int measured = 0;                   ///< animals with their view's main measure
    int refused = 0;                    ///< animals and photos without
    int toLookAt = 0;                   ///< measured, but kept out of the histories until a person accepts them
    std::vector<std::string> troubles;  ///< a sentence for each photo that gave no measure, or one to look at
};

/// What a keeper knows of all photos of a session.
struct SessionNotes {
    std::optional<bool> fedBefore{};   ///< whether the animals were fed before; absent: not told
    std::optional<BroodId> brood{};    ///< measures of animals without a card are a sample of this brood
};

/// Measures a folder of photos into the collection as one session: all of it, or nothing. An animal is told by its
/// card. The session's day is the one on which most photos say they were taken; `session.on` counts when none says so,
/// and is compared otherwise. A measure whose remarks make it doubtful is stored but not accepted. Throws
/// `Error(BadUse)` when the folder holds no photo, `Error(BadPhoto)` when not one of them can be read.
[[nodiscard]] SessionSummary addSessionFolder(Store& store, const std::filesystem::path& folder, const Session& session,
                                              const Box& box, int jobs, const Progress& progress = {},
                                              const OnResult& onResult = {}, const SessionNotes& notes = {});

/// Keeps a copy of a box file in the collection's `calibration/` folder, beside earlier ones of other content.
void keepBoxFile(const Store& store, const std::filesystem::path& boxFile);

/// Throws what `addHouse` would throw for a house file, its boxes and folders, and changes nothing.
void checkHouse(const std::filesystem::path& houseFile, const std::filesystem::path& calibrationFolder);

/// Fills an empty store with what a house file (format "ringrule-house/1", see `docs/collection.md`) says of tanks,
/// diets and animals, then measures each of its sessions, whose folders lie beside the file. File, boxes and folders
/// are checked before the first change. Throws `Error(BadData)`, `Error(BadBox)`.
std::vector<SessionSummary> addHouse(Store& store, const std::filesystem::path& houseFile,
                                     const std::filesystem::path& calibrationFolder, int jobs,
                                     const Progress& progress = {}, const OnResult& onResult = {});

}  // namespace ringrule
