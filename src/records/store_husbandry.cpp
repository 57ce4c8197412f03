// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/polyline_text.h"
#include "records/statement.h"
#include "records/store_state.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

std::string sexName(Sex sex) {
    switch (sex) {
        case Sex::Female:
            return "female";
        case Sex::Male:
            return "male";
        case Sex::Unknown:
            break;
    }
    return "unknown";
}

Sex sexFromName(const std::string& name) {
    if (name == "female") return Sex::Female;
    if (name == "male") return Sex::Male;
    return Sex::Unknown;
}

/// What an animal's row says, in one line for the change log.
std::string description(const Animal& animal) {
    std::string text = animal.code + ", " + animal.species + ", " + sexName(animal.sex);
    if (animal.hatchedOn)
        text += ", hatched " + formatDate(*animal.hatchedOn) + (animal.hatchedExactly ? "" : " (about)");
    if (animal.arrivedOn) text += ", arrived " + formatDate(*animal.arrivedOn);
    if (animal.card) text += ", card " + std::to_string(*animal.card);
    return text;
}

/// Says in the keeper's words what a unique column would refuse.
void checkFree(Statement& taken, const std::string& what) {
    if (taken.run().next()) throw Error(ErrorKind::BadData, what + " is already in this collection");
}

void checkAnimal(const Database& database, const Animal& animal) {
    Statement code(database, "SELECT 1 FROM animal WHERE code = ? AND id <> ?");
    checkFree(code.bind(animal.code).bind(animal.id), "animal \"" + animal.code + "\"");
    if (!animal.card) return;
    Statement card(database, "SELECT code FROM animal WHERE card = ? AND id <> ?");
    if (card.bind(*animal.card).bind(animal.id).run().next()) {
        throw Error(ErrorKind::BadData,
                    "card " + std::to_string(*animal.card) + " already belongs to animal \"" + card.text() + "\"");
    }
}

void bindAnimal(Statement& statement, const Animal& animal) {
    statement.bind(animal.code)
        .bind(animal.name)
        .bind(animal.species)
        .bind(animal.shape)
        .bind(sexName(animal.sex))
        .bind(animal.hatchedOn)
        .bind(animal.hatchedExactly)
        .bind(animal.hatchedSdDays)
        .bind(animal.arrivedOn)
        .bind(animal.card);
}

}  // namespace

AnimalId Store::addAnimal(const Animal& animal) {
    AnimalId id;
    together([&] {
        checkAnimal(state_->database, animal);
        Statement row(state_->database,
                      "INSERT INTO animal (code, name, species, shape, sex, hatched_on, hatched_exactly, "
                      "hatched_sd_days, arrived_on, card) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        bindAnimal(row, animal);
        id.value = row.run().addedRow();
    });
    return id;
}

void Store::updateAnimal(const Animal& animal) {
    together([&] {
        std::optional<Animal> before;
        for (const Animal& known : animals()) {
            if (known.id == animal.id) before = known;
        }
        if (!before) throw Error(ErrorKind::BadData, "there is no such animal in this collection");
        checkAnimal(state_->database, animal);
        Statement row(state_->database,
                      "UPDATE animal SET code = ?, name = ?, species = ?, shape = ?, sex = ?, hatched_on = ?, "
                      "hatched_exactly = ?, hatched_sd_days = ?, arrived_on = ?, card = ? WHERE id = ?");
        bindAnimal(row, animal);
        row.bind(animal.id).run();
        logChange(
            state_->database,
            {{}, state_->keeper, "described", "animal " + before->code, description(*before), description(animal)});
    });
}

TankId Store::addTank(const Tank& tank) {
    TankId id;
    together([&] {
        Statement taken(state_->database, "SELECT 1 FROM tank WHERE code = ?");
        checkFree(taken.bind(tank.code), "tank \"" + tank.code + "\"");
        id.value = Statement(state_->database, "INSERT INTO tank (code, name) VALUES (?, ?)")
                       .bind(tank.code)
                       .bind(tank.name)
                       .run()
                       .addedRow();
    });
    return id;
}

DietId Store::addDiet(const Diet& diet) {
    DietId id;
    together([&] {
        Statement taken(state_->database, "SELECT 1 FROM diet WHERE code = ?");
        checkFree(taken.bind(diet.code), "diet \"" + diet.code + "\"");
        id.value =
            Statement(state_->database, "INSERT INTO diet (code, name, foods, feeds_per_day) VALUES (?, ?, ?, ?)")
                .bind(diet.code)
                .bind(diet.name)
                .bind(textOfWords(diet.foods))
                .bind(diet.feedsPerDay)
                .run()
                .addedRow();
    });
    return id;
}

void Store::addStay(const Stay& stay) {
    together([&] {
        Statement(state_->database, "INSERT INTO stay (animal, tank, from_day, to_day) VALUES (?, ?, ?, ?)")
            .bind(stay.animal)
            .bind(stay.tank)
            .bind(stay.from)
            .bind(stay.to)
            .run();
    });
}

void Store::addDietSpell(const DietSpell& spell) {
    together([&] {
        Statement(state_->database, "INSERT INTO diet_spell (animal, diet, from_day, to_day) VALUES (?, ?, ?, ?)")
            .bind(spell.animal)
            .bind(spell.diet)
            .bind(spell.from)
            .bind(spell.to)
            .run();
    });
}

void Store::addState(const StateSpell& spell) {
    together([&] {
        Statement(state_->database, "INSERT INTO state_spell (animal, state, from_day, to_day) VALUES (?, ?, ?, ?)")
            .bind(spell.animal)
            .bind(spell.state)
            .bind(spell.from)
            .bind(spell.to)
            .run();
    });
}

void Store::addNote(const Note& note) {
    together([&] {
        Statement(state_->database, "INSERT INTO note (animal, on_day, text) VALUES (?, ?, ?)")
            .bind(note.animal)
            .bind(note.on)
            .bind(note.text)
            .run();
    });
}

std::vector<Animal> Store::animals() const {
    Statement rows(
        state_->database,
        "SELECT id, code, name, species, shape, sex, hatched_on, hatched_exactly, hatched_sd_days, arrived_on, "
        "card FROM animal ORDER BY id");
    rows.run();
    std::vector<Animal> all;
    while (rows.next()) {
        Animal animal;
        animal.id = rows.id<AnimalId>();
        animal.code = rows.text();
        animal.name = rows.text();
        animal.species = rows.text();
        animal.shape = rows.text();
        animal.sex = sexFromName(rows.text());
        animal.hatchedOn = rows.dateOrNone();
        animal.hatchedExactly = rows.yes();
        animal.hatchedSdDays = rows.real();
        animal.arrivedOn = rows.dateOrNone();
        if (const auto card = rows.numberOrNone()) animal.card = static_cast<int>(*card);
        all.push_back(std::move(animal));
    }
    return all;
}

std::vector<Tank> Store::tanks() const {
    Statement rows(state_->database, "SELECT id, code, name FROM tank ORDER BY id");
    rows.run();
    std::vector<Tank> all;
    while (rows.next()) all.push_back({rows.id<TankId>(), rows.text(), rows.text()});
    return all;
}

std::vector<Diet> Store::diets() const {
    Statement rows(state_->database, "SELECT id, code, name, foods, feeds_per_day FROM diet ORDER BY id");
    rows.run();
    std::vector<Diet> all;
    while (rows.next()) {
        all.push_back({rows.id<DietId>(), rows.text(), rows.text(), wordsOfText(rows.text()), rows.real()});
    }
    return all;
}

std::vector<Stay> Store::stays() const {
    Statement rows(state_->database, "SELECT animal, tank, from_day, to_day FROM stay ORDER BY from_day, id");
    rows.run();
    std::vector<Stay> all;
    while (rows.next()) all.push_back({rows.id<AnimalId>(), rows.id<TankId>(), rows.date(), rows.dateOrNone()});
    return all;
}

std::vector<DietSpell> Store::dietSpells() const {
    Statement rows(state_->database, "SELECT animal, diet, from_day, to_day FROM diet_spell ORDER BY from_day, id");
    rows.run();
    std::vector<DietSpell> all;
    while (rows.next()) all.push_back({rows.id<AnimalId>(), rows.id<DietId>(), rows.date(), rows.dateOrNone()});
    return all;
}

std::vector<StateSpell> Store::states() const {
    Statement rows(state_->database, "SELECT animal, state, from_day, to_day FROM state_spell ORDER BY from_day, id");
    rows.run();
    std::vector<StateSpell> all;
    while (rows.next()) all.push_back({rows.id<AnimalId>(), rows.text(), rows.date(), rows.dateOrNone()});
    return all;
}

std::vector<Note> Store::notes(AnimalId animal) const {
    Statement rows(state_->database, "SELECT animal, on_day, text FROM note WHERE animal = ? ORDER BY on_day, id");
    rows.bind(animal).run();
    std::vector<Note> all;
    while (rows.next()) all.push_back({rows.id<AnimalId>(), rows.date(), rows.text()});
    return all;
}

}  // namespace ringrule
