// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>

#include "ringrule/measure/repeats.h"
#include "ringrule/workflow/collection_review.h"

namespace ringrule {
namespace {

bool covers(const StateSpell& spell, Date on) {
    return spell.from <= on && (!spell.to || on <= *spell.to);
}

/// The day of each photo.
std::map<PhotoId, Date> daysOfPhotos(const Store& store) {
    std::map<PhotoId, Date> days;
    for (const Session& session : store.sessions()) {
        for (const StoredPhoto& photo : store.photos(session.id)) days[photo.id] = session.on;
    }
    return days;
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

template <class Spell>
std::vector<Spell> ofAnimal(const std::vector<Spell>& all, AnimalId animal) {
    std::vector<Spell> own;
    for (const Spell& spell : all) {
        if (spell.animal == animal) own.push_back(spell);
    }
    return own;
}

}  // namespace

std::vector<AnimalHistory> historiesFromStore(const Store& store) {
    const auto days = daysOfPhotos(store);
    const auto stays = store.stays();
    const auto dietSpells = store.dietSpells();
    const auto states = store.states();
    std::vector<AnimalHistory> histories;
    for (const Animal& animal : store.animals()) {
        AnimalHistory history;
        history.animal = animal;
        history.stays = ofAnimal(stays, animal.id);
        history.dietSpells = ofAnimal(dietSpells, animal.id);
        history.states = ofAnimal(states, animal.id);
        std::map<Date, std::vector<Measurement>> byDay;
        for (const StoredMeasure& stored : store.measuresOfAnimal(animal.id)) {
            if (stored.accepted) byDay[days.at(stored.photo)].push_back(stored.measurement);
        }
        for (const auto& [on, photos] : byDay) history.observations.push_back(observationOn(on, history, photos));
        histories.push_back(std::move(history));
    }
    return histories;
}

}  // namespace ringrule
