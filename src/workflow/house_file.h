// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ringrule/husbandry/records.h"

namespace ringrule {

/// What a house file says, its codes not yet numbers of a store.
struct House {
    struct Spell {
        std::string animal;
        std::string of;  ///< code of a tank or diet, or the name of a state
        Date from;
        std::optional<Date> to;
    };
    struct NoteLine {
        std::string animal;
        Date on;
        std::string text;
    };
    struct SessionLine {
        Date on;
        std::string keeper;
        std::filesystem::path folder;  ///< beside the house file
        std::string box;               ///< file name in the calibration folder
        std::string toLookAt;          ///< code of the tank whose measures still wait for a person, or empty
    };

    std::string name;
    std::vector<std::string> keepers;
    std::vector<Tank> tanks;
    std::vector<Diet> diets;
    std::vector<Animal> animals;
    std::vector<Spell> stays;
    std::vector<Spell> dietSpells;
    std::vector<Spell> states;
    std::vector<NoteLine> notes;
    std::vector<SessionLine> sessions;
};

/// The house in `path` (format "ringrule-house/1"). Throws `Error(BadData)` that names the field for anything missing,
/// unknown, or naming an animal, tank, diet or keeper that the file does not have.
[[nodiscard]] House readHouse(const std::filesystem::path& path);

}  // namespace ringrule
