// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "ringrule/husbandry/records.h"

namespace ringrule {

struct Brood {
    BroodId id;
    std::string code;  ///< the keeper's own, unique in a collection
    std::string species;
    std::optional<AnimalId> mother;
    std::optional<AnimalId> father;  ///< who carried it
    std::optional<TankId> tank;
    std::optional<Date> bornOn;
    std::string note;
};

struct BroodEvent {
    BroodId brood;
    Date on;
    std::string event;         ///< "courting", "egg-transfer", "carrying", "birth" or "count"
    std::optional<int> count;  ///< young born or counted
    std::string note;
};

}  // namespace ringrule
