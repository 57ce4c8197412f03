// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_changes.h"

#include <algorithm>

namespace ringrule {
namespace {

[[noreturn]] void refuse(const std::string& sentence) {
    throw Error(ErrorKind::BadData, sentence);
}

Animal animalOf(const Store& store, AnimalId id) {
    for (const Animal& animal : store.animals())
        if (animal.id == id) return animal;
    refuse("the animal is no longer in the collection; open the collection again");
}

/// Whether two spells share a day; an end that is not told is later than every day. Days are ISO, so text compares.
bool overlap(const Record& a, const Record& b) {
    const std::string aTo = a.text("to_day"), bTo = b.text("to_day");
    return (bTo.empty() || a.text("from_day") <= bTo) && (aTo.empty() || b.text("from_day") <= aTo);
}

bool isSpell(const RecordKind& kind) {
    return kind.name == "stay" || kind.name == "diet-spell" || kind.name == "state";
}

/// Whether `into` has a spell of this kind that speaks of the same time (and, of a state, of the same state).
bool standsBy(const RecordKind& kind, const std::vector<Record>& records, const Record& record,
              const std::string& into) {
    return isSpell(kind) && std::any_of(records.begin(), records.end(), [&](const Record& other) {
               return other.text("animal") == into && overlap(record, other) &&
                      record.text("state") == other.text("state");
           });
}

void relink(Store& store, const RecordKind& kind, const std::string& from, const std::string& into) {
    std::vector<std::string> links;
    for (const RecordField& field : kind.fields)
        if (field.type == FieldType::Link && field.of == "animal") links.push_back(field.name);
    if (links.empty() || kind.use == RecordUse::Written) return;
    const std::vector<Record> records = store.records(kind.name);
    for (const Record& record : records) {
        RecordValues changed;
        for (const std::string& link : links)
            if (record.text(link) == from) changed[link] = into;
        if (changed.empty()) continue;
        if (standsBy(kind, records, record, into))
            store.removeRecord(kind.name, record.id, record.version);
        else
            store.changeRecord(kind.name, record.id, record.version, changed);
    }
}

}  // namespace

TankId tankOfCode(Store& store, const std::string& code) {
    for (const Tank& tank : store.tanks())
        if (tank.code == code) return tank.id;
    return store.addTank({{}, code, {}});
}

void moveAnimal(Store& store, AnimalId animal, const std::string& tankCode, Date on) {
    const std::string code = animalOf(store, animal).code;
    for (const Record& stay : store.records("stay")) {
        if (stay.text("animal") != code || !stay.text("to_day").empty()) continue;
        if (stay.text("tank") == tankCode) refuse(code + " is in " + tankCode + " already");
        if (stay.text("from_day") > formatDate(on))
            refuse(code + " came to " + stay.text("tank") + " on " + stay.text("from_day") +
                   ": give that day or a later one");
        store.changeRecord("stay", stay.id, stay.version, {{"to_day", formatDate(on)}});
    }
    store.addStay({animal, tankOfCode(store, tankCode), on, {}});
}

void mergeAnimals(Store& store, AnimalId from, AnimalId into) {
    const Animal one = animalOf(store, from), other = animalOf(store, into);
    if (from == into) refuse("choose another animal: " + one.code + " is this one");
    if (one.species != other.species)
        refuse(one.code + " is " + one.species + " and " + other.code + " is " + other.species +
               ": correct the species first if they are one animal");
    for (const RecordKind& kind : recordKinds()) relink(store, kind, one.code, other.code);
    for (const Record& record : store.records("animal"))
        if (record.id == from.value) store.removeRecord("animal", record.id, record.version);
}

AnimalId splitAnimal(Store& store, AnimalId animal, Date from, const std::string& newCode) {
    Animal other = animalOf(store, animal);
    const std::vector<StoredMeasure> measures = store.measuresOfAnimal(animal);
    const auto later = [&](const StoredMeasure& measure) { return measure.sessionOn >= from; };
    const auto moving = std::count_if(measures.begin(), measures.end(), later);
    if (moving == 0 || moving == static_cast<std::ptrdiff_t>(measures.size()))
        refuse("choose a day between two sessions of " + other.code + ": each of the two needs one");
    other.id = {};
    other.code = newCode;
    other.name.clear();
    other.card.reset();
    const AnimalId added = store.addAnimal(other);
    const auto goesOn = [&](const auto& spell) { return spell.animal == animal && (!spell.to || *spell.to >= from); };
    for (Stay stay : store.stays())
        if (goesOn(stay)) store.addStay({added, stay.tank, std::max(stay.from, from), stay.to});
    const std::string code = animalOf(store, animal).code;
    for (const Record& spell : store.records("diet-spell"))
        if (spell.text("animal") == code && (spell.text("to_day").empty() || spell.text("to_day") >= formatDate(from)))
            (void)store.addRecord("diet-spell", {{"animal", newCode},
                                                 {"diet", spell.text("diet")},
                                                 {"from_day", std::max(spell.text("from_day"), formatDate(from))},
                                                 {"to_day", spell.text("to_day")}});
    for (const StoredMeasure& measure : measures)
        if (later(measure)) store.assignAnimal(measure.id, added);
    return added;
}

}  // namespace ringrule
