// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "ringrule/measure/repeats.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {
namespace {

// Of every day that can be written in four digits.
constexpr Date kFirstDay{std::chrono::year{0} / 1 / 1};
constexpr Date kLastDay{std::chrono::year{9999} / 12 / 31};

bool covers(const StateSpell& spell, Date on) {
    return spell.from <= on && (!spell.to || on <= *spell.to);
}

Observation observationOn(Date on, const AnimalHistory& history, const std::vector<Measurement>& photos) {
    const SessionMeasure combined = combineRepeats(photos);
    Observation seen;
    seen.on = on;
    if (history.animal.hatchedOn) seen.ageDays = static_cast<double>((on - *history.animal.hatchedOn).count());
    seen.standardLengthMm = combined.standardLengthMm;
    seen.trunkDepthMm = combined.trunkDepthMm;
    seen.trunkWidthMm = combined.trunkWidthMm;
    seen.girthMm = combined.girthMm;
    seen.girthRatio = combined.girthRatio;
    seen.depthRatio = combined.depthRatio;
    seen.bellyHollowPercent = combined.bellyHollowPercent;
    seen.sidePhotos = combined.sidePhotos;
    for (const StateSpell& state : history.states) {
        if (covers(state, on)) seen.girthFair = false;
    }
    return seen;
}

/// Half-widths of the 95 % interval of a length by hand whose own is not known: 3 %, and 1 mm at least. Common
/// practice, no source: a ruler beside a live animal, its body not quite straight.
constexpr double kHandU95Relative = 0.03;
constexpr double kHandU95Mm = 1.0;

Estimate lengthByHand(const HandMeasure& measure) {
    const double u95 = measure.u95.value_or(std::max(kHandU95Mm, kHandU95Relative * measure.value));
    return {measure.value, u95 / 1.959963984540054, 0.0};
}

/// Adds the lengths that were taken by hand on days without photos that count; the last one of a day counts. Depth and
/// girth by hand are another thing than those seen in a photo and are not judged beside them.
void addLengthsByHand(std::map<Date, Observation>& days, const std::vector<HandMeasure>& measures,
                      const Animal& animal) {
    std::map<Date, Estimate> lengths;
    for (const HandMeasure& measure : measures)
        if (measure.measure == "standard_length_mm" && measure.value > 0.0) lengths[measure.on] = lengthByHand(measure);
    for (const auto& [on, length] : lengths) {
        if (days.contains(on)) continue;
        Observation& seen = days[on];
        seen.on = on;
        if (animal.hatchedOn) seen.ageDays = static_cast<double>((on - *animal.hatchedOn).count());
        seen.standardLengthMm = length;
    }
}

template <class Spell>
std::map<AnimalId, std::vector<Spell>> byAnimal(const std::vector<Spell>& all) {
    std::map<AnimalId, std::vector<Spell>> sorted;
    for (const Spell& spell : all) sorted[spell.animal].push_back(spell);
    return sorted;
}

template <class Value>
Value ofAnimal(std::map<AnimalId, Value>& all, AnimalId animal) {
    const auto found = all.find(animal);
    return found == all.end() ? Value{} : std::move(found->second);
}

}  // namespace

std::vector<AnimalHistory> historiesFromStore(const Store& store) {
    auto stays = byAnimal(store.stays());
    auto dietSpells = byAnimal(store.dietSpells());
    auto states = byAnimal(store.states());
    auto byHand = byAnimal(store.handMeasures());
    std::map<AnimalId, std::vector<FeedingNote>> feedingNotes;
    for (FeedingNote& note : store.feedingNotes())
        if (note.animal) feedingNotes[*note.animal].push_back(std::move(note));
    std::map<AnimalId, std::map<Date, std::vector<Measurement>>> photos;
    for (StoredMeasure& stored : store.measuresBetween(kFirstDay, kLastDay))
        photos[*stored.animal][stored.sessionOn].push_back(std::move(stored.measurement));
    std::vector<AnimalHistory> histories;
    for (const Animal& animal : store.animals()) {
        AnimalHistory history;
        history.animal = animal;
        history.stays = ofAnimal(stays, animal.id);
        history.dietSpells = ofAnimal(dietSpells, animal.id);
        history.states = ofAnimal(states, animal.id);
        history.feedingNotes = ofAnimal(feedingNotes, animal.id);
        std::map<Date, Observation> days;
        for (const auto& [on, ofDay] : ofAnimal(photos, animal.id)) days[on] = observationOn(on, history, ofDay);
        addLengthsByHand(days, ofAnimal(byHand, animal.id), animal);
        for (auto& [on, seen] : days) history.observations.push_back(std::move(seen));
        histories.push_back(std::move(history));
    }
    return histories;
}

}  // namespace ringrule
