// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ringrule/husbandry/species.h"
#include "ringrule/judge/judge_rules.h"

namespace ringrule {

/// A threshold that a file sets, and why.
struct SetThreshold {
    std::string species;  ///< empty: for all that set none of their own
    std::string name;
    double value = 0.0;
    std::string source;
};

/// What a species file says (format "ringrule-species/1", see `docs/judgement.md`).
struct SpeciesFile {
    std::string from;  ///< path, or "shipped with Ringrule"
    std::vector<SpeciesFacts> facts;
    std::vector<SetThreshold> set;
    JudgeRules rules;
};

/// Reads a species file. Throws `Error(BadData)` with the field's place in words when it cannot be read, is not valid
/// JSON, has an unknown or double field, or a value that makes no sense.
[[nodiscard]] SpeciesFile readSpeciesFile(const std::filesystem::path& path);

/// The file shipped with the program, as text and as read.
[[nodiscard]] std::string shippedSpeciesText();
[[nodiscard]] SpeciesFile shippedSpecies();

/// That of a collection: `species.json` in its folder when there is one, else the shipped one.
[[nodiscard]] SpeciesFile speciesOfCollection(const std::filesystem::path& folder);

}  // namespace ringrule
