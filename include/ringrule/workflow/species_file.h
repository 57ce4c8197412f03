// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <map>
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

/// Sets thresholds by name for all species that set none of their own, in the collection's `species.json` (made from
/// the shipped one when there is none), each with `source` as its reason. Throws `Error(BadData)` when a name or value
/// makes no sense, `Error(NoSpace)` when the file cannot be written; the file is then as it was.
void setThresholdsOfCollection(const std::filesystem::path& folder, const std::map<std::string, double>& values,
                               const std::string& source);

}  // namespace ringrule
