// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ringrule/husbandry/date.h"

namespace ringrule {

/// A row's number, typed by what it numbers. 0: not stored yet.
template <class Tag>
struct Id {
    std::int64_t value = 0;
    friend constexpr auto operator<=>(Id, Id) = default;  // NOLINT(modernize-use-nullptr): the check trips over <=>
};
using AnimalId = Id<struct AnimalTag>;
using TankId = Id<struct TankTag>;
using DietId = Id<struct DietTag>;
using SessionId = Id<struct SessionTag>;
using PhotoId = Id<struct PhotoTag>;
using MeasureId = Id<struct MeasureTag>;
using BroodId = Id<struct BroodTag>;

enum class Sex { Unknown, Female, Male };

struct Animal {
    AnimalId id;
    std::string code;     ///< the keeper's own, unique in a collection
    std::string name;     ///< may be empty
    std::string species;  ///< scientific name
    std::string shape;    ///< "pipefish", "seahorse", "fish"
    Sex sex = Sex::Unknown;
    std::optional<Date> hatchedOn;
    bool hatchedExactly = false;
    double hatchedSdDays = 0.0;  ///< uncertainty of an estimated hatch date
    std::optional<Date> arrivedOn;
    std::optional<int> card;  ///< number on its animal card
    std::string sexToldBy;    ///< how the sex was told, e.g. "pouch"
    std::string source;       ///< where it comes from
    std::optional<AnimalId> mother;
    std::optional<AnimalId> father;
    std::optional<BroodId> brood;
    std::optional<Date> goneOn;  ///< died or left
    std::string goneHow;         ///< "died", "left", or empty
    std::int64_t version = 0;    ///< of the row as it was read; a change of a row that was changed since is refused
};

struct Tank {
    TankId id;
    std::string code;
    std::string name;
};

/// An animal in a tank from a day on, until the day it left (absent: still there).
struct Stay {
    AnimalId animal;
    TankId tank;
    Date from;
    std::optional<Date> to;
};

struct Diet {
    DietId id;
    std::string code;
    std::string name;
    std::vector<std::string> foods;
    double feedsPerDay = 0.0;
    std::string enrichment = {};  ///< what the food is enriched with
};

struct DietSpell {
    AnimalId animal;
    DietId diet;
    Date from;
    std::optional<Date> to;
};

/// A time in which girth must not be judged ("brooding", "carrying-eggs", "just-spawned").
struct StateSpell {
    AnimalId animal;
    std::string state;
    Date from;
    std::optional<Date> to;
};

struct Note {
    AnimalId animal;
    Date on;
    std::string text;
};

struct Session {
    SessionId id;
    Date on;
    std::string keeper;  ///< initials
    std::string boxName;
    std::string folder;  ///< where its photos came from
};

}  // namespace ringrule
