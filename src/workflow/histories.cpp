// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "ringrule/measure/repeats.h"
#include "ringrule/records/measured_days.h"
#include "ringrule/statistics/estimate.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {
namespace {

// Of every day that can be written in four digits.
constexpr Date kFirstDay{std::chrono::year{0} / 1 / 1};
constexpr Date kLastDay{std::chrono::year{9999} / 12 / 31};

bool covers(const StateSpell& spell, Date on) {
    return spell.from <= on && (!spell.to || on <= *spell.to);
}

Observation observationOn(Date on, const AnimalHistory& history, std::span<const Measurement> photos) {
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
    return {measure.value, u95 / kSdsInHalf95, 0.0};
}

/// Adds the lengths that were taken by hand on days without photos that count; the last one of a day counts. Depth and
/// girth by hand are another thing than those seen in a photo and are not judged beside them.
void addLengthsByHand(AnimalHistory& history, const std::vector<HandMeasure>& measures) {
    std::map<Date, Estimate> lengths;
    for (const HandMeasure& measure : measures)
        if (measure.measure == "standard_length_mm" && measure.value > 0.0) lengths[measure.on] = lengthByHand(measure);
    for (const Observation& seen : history.observations) lengths.erase(seen.on);
    for (const auto& [on, length] : lengths) {
        Observation seen;
        seen.on = on;
        if (history.animal.hatchedOn) seen.ageDays = static_cast<double>((on - *history.animal.hatchedOn).count());
        seen.standardLengthMm = length;
        history.observations.push_back(seen);
    }
    if (!lengths.empty())
        std::sort(history.observations.begin(), history.observations.end(),
                  [](const Observation& a, const Observation& b) { return a.on < b.on; });
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
    std::vector<AnimalHistory> histories;
    std::map<AnimalId, std::size_t> places;
    for (const Animal& animal : store.animals()) {
        places[animal.id] = histories.size();
        AnimalHistory history;
        history.animal = animal;
        history.stays = ofAnimal(stays, animal.id);
        history.dietSpells = ofAnimal(dietSpells, animal.id);
        history.states = ofAnimal(states, animal.id);
        history.feedingNotes = ofAnimal(feedingNotes, animal.id);
        histories.push_back(std::move(history));
    }
    eachMeasuredDay(store, kFirstDay, kLastDay, [&](AnimalId animal, Date on, std::span<const Measurement> photos) {
        AnimalHistory& history = histories[places.at(animal)];
        history.observations.push_back(observationOn(on, history, photos));
    });
    for (AnimalHistory& history : histories) addLengthsByHand(history, ofAnimal(byHand, history.animal.id));
    return histories;
}

}  // namespace ringrule
