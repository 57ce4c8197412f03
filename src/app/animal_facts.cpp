// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_facts.h"

#include <QCoreApplication>
#include <QStringList>

#include "app/day_text.h"

namespace ringrule {
namespace {

struct AnimalFacts {
    Q_DECLARE_TR_FUNCTIONS(AnimalFacts)
};

/// The last of the spells that go on.
template <class Spell>
const Spell* goingOn(const std::vector<Spell>& spells) {
    const Spell* found = nullptr;
    for (const Spell& spell : spells)
        if (!spell.to && (found == nullptr || spell.from >= found->from)) found = &spell;
    return found;
}

void addStory(QStringList& facts, const Collection& collection, const AnimalHistory& history) {
    if (const Stay* stay = goingOn(history.stays))
        if (const Tank* tank = collection.tank(stay->tank))
            facts << QString::fromStdString(tank->name.empty() ? tank->code : tank->name);
    if (const DietSpell* spell = goingOn(history.dietSpells))
        facts << AnimalFacts::tr("%1 since %2").arg(collection.dietName(spell->diet), dayText(spell->from));
    if (const StateSpell* state = goingOn(history.states)) facts << QString::fromStdString(state->state);
}

}  // namespace

QString animalFacts(const Collection& collection, AnimalId id) {
    const Animal* animal = collection.animal(id);
    if (animal == nullptr) return {};
    QStringList facts;
    if (!animal->name.empty()) facts << QString::fromStdString(animal->name);
    facts << QString::fromStdString(animal->species);
    if (animal->sex != Sex::Unknown)
        facts << (animal->sex == Sex::Female ? AnimalFacts::tr("female") : AnimalFacts::tr("male"));
    if (animal->hatchedOn)
        facts << (animal->hatchedExactly ? AnimalFacts::tr("hatched %1") : AnimalFacts::tr("hatched about %1"))
                     .arg(dayText(*animal->hatchedOn));
    for (const AnimalHistory& history : collection.review().histories)
        if (history.animal.id == id) addStory(facts, collection, history);
    if (animal->card) facts << AnimalFacts::tr("card %1").arg(*animal->card);
    if (animal->goneOn)
        facts << (animal->goneHow == "died" ? AnimalFacts::tr("died %1") : AnimalFacts::tr("left %1"))
                     .arg(dayText(*animal->goneOn));
    return facts.join(QStringLiteral("  ·  "));
}

}  // namespace ringrule
