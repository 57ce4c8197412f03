// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ringrule/growth/observation.h"
#include "ringrule/husbandry/care.h"
#include "ringrule/husbandry/records.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

enum class FindingKind {
    BehindTankmates,
    Stalled,
    Thin,
    GettingThinner,
    NotFeeding,       ///< refused its food days running, by the keepers' notes
    TankLow,          ///< a whole tank below its own past or growth that was published
    MeasureDoubtful,  ///< not believable: an error, or another animal's card
    CannotTell
};

[[nodiscard]] std::string_view findingName(FindingKind kind);  ///< stable id, e.g. "behind-tankmates"

/// All that is known of one animal, in order of time.
struct AnimalHistory {
    Animal animal;
    std::vector<Stay> stays;
    std::vector<DietSpell> dietSpells;
    std::vector<StateSpell> states;
    std::vector<Observation> observations;
    std::vector<FeedingNote> feedingNotes;  ///< of this animal alone, in any order
};

/// A flag with its evidence, in words for a keeper and numbers for a sheet. Never a diagnosis.
struct Finding {
    FindingKind kind = FindingKind::CannotTell;
    AnimalId animal;                        ///< none when it is about a whole tank
    std::string animalCode;                 ///< of a whole tank "tank" and its code, where that is known
    std::optional<TankId> tank;             ///< only when it is about a whole tank
    Date on;                                ///< session that raised it
    std::optional<Date> since;              ///< first session of the episode
    std::vector<std::string> comparedWith;  ///< codes of the tankmates, or empty (own past)
    std::string measure;                    ///< what was compared, e.g. "condition index"
    std::string unit;                       ///< "%", "mm/day"
    Estimate by;                            ///< how much, signed: negative is behind or thinner
    std::string sentence;                   ///< what, against whom, by how much, since when
    std::vector<std::string> otherReasons;  ///< what else could explain it
    std::string nextStep;                   ///< what a keeper does now
};

}  // namespace ringrule
