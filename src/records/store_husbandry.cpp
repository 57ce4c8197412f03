// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "records/record_rows.h"
#include "records/record_values.h"
#include "records/row_history.h"
#include "records/store_state.h"
#include "records/tank_diets.h"
#include "records/typed_records.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

/// What an animal's row says, in one line for the change log.
std::string description(const Animal& animal) {
    const std::string sex = animal.sex == Sex::Female ? "female" : animal.sex == Sex::Male ? "male" : "unknown";
    std::string text = animal.code + ", " + animal.species + ", " + sex;
    if (animal.hatchedOn)
        text += ", hatched " + formatDate(*animal.hatchedOn) + (animal.hatchedExactly ? "" : " (about)");
    if (animal.arrivedOn) text += ", arrived " + formatDate(*animal.arrivedOn);
    if (animal.card) text += ", card " + std::to_string(*animal.card);
    return text;
}

template <class T>
std::vector<T> readAll(const Database& database, const char* kind, const std::string& condition = {}) {
    std::vector<T> all;
    eachRecord(database, recordKind(kind), Links::AsNumbers, condition, [&](const Record& record) {
        all.push_back(structOf<T>(record));
        if constexpr (requires(T & one) { one.id.value; }) all.back().id.value = record.id;
        if constexpr (requires(T & one) { one.number; }) all.back().number = record.id;
        if constexpr (requires(T & one) { one.version; }) all.back().version = record.version;
    });
    return all;
}

/// Those of one animal, tank or brood.
std::string of(const char* column, std::int64_t id) {
    return std::string("t.") + column + " = " + std::to_string(id);
}

template <class T>
void inOrderOfStart(std::vector<T>& spells) {
    std::stable_sort(spells.begin(), spells.end(), [](const T& a, const T& b) { return a.from < b.from; });
}

template <class T>
void inOrderOfDay(std::vector<T>& lines) {
    std::stable_sort(lines.begin(), lines.end(), [](const T& a, const T& b) { return a.on < b.on; });
}

}  // namespace

AnimalId Store::addAnimal(const Animal& animal) {
    return {addRow("animal", recordOf(animal).values)};
}
TankId Store::addTank(const Tank& tank) {
    return {addRow("tank", recordOf(tank).values)};
}
DietId Store::addDiet(const Diet& diet) {
    return {addRow("diet", recordOf(diet).values)};
}
BroodId Store::addBrood(const Brood& brood) {
    return {addRow("brood", recordOf(brood).values)};
}
SessionId Store::addSession(const Session& session) {
    return {addRow("session", recordOf(session).values)};
}
void Store::addStay(const Stay& stay) {
    addRow("stay", recordOf(stay).values);
}
void Store::addDietSpell(const DietSpell& spell) {
    addRow("diet-spell", recordOf(spell).values);
}
void Store::addTankDietSpell(const TankDietSpell& spell) {
    addRow("tank-diet", recordOf(spell).values);
}
void Store::addState(const StateSpell& spell) {
    addRow("state", recordOf(spell).values);
}
void Store::addNote(const Note& note) {
    addRow("note", recordOf(note).values);
}
void Store::addBroodEvent(const BroodEvent& event) {
    addRow("brood-event", recordOf(event).values);
}
void Store::addFeedingNote(const FeedingNote& note) {
    addRow("feeding", recordOf(note).values);
}
void Store::addWaterReading(const WaterReading& reading) {
    addRow("water", recordOf(reading).values);
}
void Store::addTreatment(const Treatment& treatment) {
    addRow("treatment", recordOf(treatment).values);
}
std::int64_t Store::addDecision(const Decision& decision) {
    return addRow("decision", recordOf(decision).values);
}
void Store::addHandMeasure(const HandMeasure& measure) {
    addRow("hand-measure", recordOf(measure).values);
}

void Store::updateAnimal(const Animal& animal) {
    const RecordKind& kind = recordKind("animal");
    together([&] {
        const auto before = findRecord(state_->database, kind, animal.id.value, Links::AsNumbers);
        if (!before) throw Error(ErrorKind::BadData, "there is no such animal in this collection");
        const RowHistory history(state_->database, state_->keeper);
        history.mustBeVersion(kind, *before, animal.version);
        RecordValues values = normalValues(kind, recordOf(animal).values);
        for (const RecordField& field : kind.fields) values.try_emplace(field.name);
        changeRow(kind, *before, values,
                  {{},
                   state_->keeper,
                   "described",
                   nameOf(kind, *before),
                   description(structOf<Animal>(*before)),
                   description(animal)});
    });
}

std::vector<Animal> Store::animals() const {
    return readAll<Animal>(state_->database, "animal");
}
std::vector<Tank> Store::tanks() const {
    return readAll<Tank>(state_->database, "tank");
}
std::vector<Diet> Store::diets() const {
    return readAll<Diet>(state_->database, "diet");
}
std::vector<Brood> Store::broods() const {
    return readAll<Brood>(state_->database, "brood");
}

std::vector<Stay> Store::stays() const {
    auto all = readAll<Stay>(state_->database, "stay");
    inOrderOfStart(all);
    return all;
}

std::vector<DietSpell> Store::dietSpells() const {
    auto all = readAll<DietSpell>(state_->database, "diet-spell");
    const auto ofTanks = readAll<TankDietSpell>(state_->database, "tank-diet");
    if (!ofTanks.empty()) addTankDiets(all, ofTanks, stays());
    inOrderOfStart(all);
    return all;
}

std::vector<StateSpell> Store::states() const {
    auto all = readAll<StateSpell>(state_->database, "state");
    inOrderOfStart(all);
    return all;
}

std::vector<Note> Store::notes(AnimalId animal) const {
    auto all = readAll<Note>(state_->database, "note", of("animal", animal.value));
    inOrderOfDay(all);
    return all;
}

std::vector<BroodEvent> Store::broodEvents(BroodId brood) const {
    auto all = readAll<BroodEvent>(state_->database, "brood-event", of("brood", brood.value));
    inOrderOfDay(all);
    return all;
}

std::vector<FeedingNote> Store::feedingNotes() const {
    auto all = readAll<FeedingNote>(state_->database, "feeding");
    inOrderOfDay(all);
    return all;
}

std::vector<WaterReading> Store::waterReadings(TankId tank) const {
    auto all = readAll<WaterReading>(state_->database, "water", of("tank", tank.value));
    inOrderOfDay(all);
    return all;
}

std::vector<Treatment> Store::treatments() const {
    auto all = readAll<Treatment>(state_->database, "treatment");
    inOrderOfStart(all);
    return all;
}

std::vector<Decision> Store::decisions() const {
    auto all = readAll<Decision>(state_->database, "decision");
    inOrderOfDay(all);
    return all;
}

std::vector<Decision> Store::decisions(AnimalId animal) const {
    auto all = readAll<Decision>(state_->database, "decision", of("animal", animal.value));
    inOrderOfDay(all);
    return all;
}

std::vector<HandMeasure> Store::handMeasures() const {
    auto all = readAll<HandMeasure>(state_->database, "hand-measure");
    inOrderOfDay(all);
    return all;
}

std::vector<HandMeasure> Store::handMeasures(AnimalId animal) const {
    auto all = readAll<HandMeasure>(state_->database, "hand-measure", of("animal", animal.value));
    inOrderOfDay(all);
    return all;
}

}  // namespace ringrule
