// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "ringrule/husbandry/records.h"

namespace ringrule {

/// Food of one day, for one animal or for a whole tank (exactly one of the two is there).
struct FeedingNote {
    std::optional<AnimalId> animal;
    std::optional<TankId> tank;
    Date on;
    std::string food;
    std::string outcome;  ///< "offered", "taken" or "refused"
    std::string keeper;
    std::string note;
};

struct WaterReading {
    TankId tank;
    Date on;
    std::optional<double> temperatureC;
    std::optional<double> salinityPpt;
    std::string keeper;
    std::string note;
};

/// A treatment of one animal or of a whole tank (exactly one of the two is there).
struct Treatment {
    std::optional<AnimalId> animal;
    std::optional<TankId> tank;
    Date from;
    std::optional<Date> to;
    std::string what;
    std::string dose;
    std::string orderedBy;
    std::string note;
};

/// What a keeper decided on a finding of one animal or of a whole tank (exactly one of the two is there).
struct Decision {
    std::optional<AnimalId> animal;
    Date on;               ///< day of the decision
    std::string finding;   ///< id of the finding, e.g. "thin"
    std::string decision;  ///< "change-diet", "measure-again", "watch-feeding", "ask-veterinarian", "acted" (otherwise),
                           ///< "watch" or "dismissed"
    std::string keeper;
    std::string note;
    std::optional<TankId> tank{};
    std::optional<Date> findingOn{};   ///< day on which the finding was raised
    std::string findingText{};         ///< the finding's sentence as the keeper read it
    std::optional<Date> followUpOn{};  ///< day to look again
    std::int64_t number = 0;           ///< read only: the record's number
    std::int64_t version = 0;          ///< read only: of the record as it was read
};

/// A measure that was taken by hand, with ruler or callipers, or comes from an older record.
struct HandMeasure {
    AnimalId animal;
    Date on;
    std::string measure;        ///< column name of the measure, e.g. "standard_length_mm"
    double value = 0.0;         ///< in the unit that the name ends with
    std::optional<double> u95;  ///< half-width of its 95 % interval; absent: not known
    std::string method;
    std::string keeper;
    std::string note;
};

/// A diet that a whole tank is on; an animal's own diet spell wins over it.
struct TankDietSpell {
    TankId tank;
    DietId diet;
    Date from;
    std::optional<Date> to;
};

}  // namespace ringrule
