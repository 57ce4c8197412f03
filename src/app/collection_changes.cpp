// SPDX-License-Identifier: GPL-3.0-or-later
// What keepers change in the collection, each of it one entry that can be taken back.
#include <algorithm>

#include "app/animal_changes.h"
#include "app/collection.h"
#include "app/store_change_command.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

QString asQt(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace

void Collection::change(const QString& words, const std::function<void(Store&)>& body, std::optional<PhotoId> photo) {
    std::vector<std::int64_t> lines = linesWritten(*store_, [&] { body(*store_); });
    if (!lines.empty()) undo_.push(new StoreChangeCommand(*this, words, std::move(lines), photo));
}

void Collection::changedBackTo(const QString& words, std::optional<PhotoId> photo) {
    emit changedBack(words, photo);
    if (photo) emit photoChanged(*photo);
    reload();
    emit decisionsChanged();
}

void Collection::addAnimal(const Animal& animal, const std::string& tankCode, Date since) {
    change(tr("new animal %1").arg(asQt(animal.code)), [&](Store& store) {
        const AnimalId added = store.addAnimal(animal);
        if (!tankCode.empty()) store.addStay({added, tankOfCode(store, tankCode), since, {}});
    });
    reload();
}

void Collection::moveAnimal(AnimalId animal, const std::string& tankCode, Date on) {
    change(tr("move of %1 to %2").arg(animalCode(animal), asQt(tankCode)),
           [&](Store& store) { ringrule::moveAnimal(store, animal, tankCode, on); });
    reload();
}

void Collection::mergeAnimals(AnimalId from, AnimalId into) {
    change(tr("%1 and %2 made one").arg(animalCode(from), animalCode(into)),
           [&](Store& store) { ringrule::mergeAnimals(store, from, into); });
    reload();
}

void Collection::splitAnimal(AnimalId animal, Date from, const std::string& newCode) {
    change(tr("sessions of %1 given to %2").arg(animalCode(animal), asQt(newCode)),
           [&](Store& store) { ringrule::splitAnimal(store, animal, from, newCode); });
    reload();
}

void Collection::addRecord(const std::string& kind, const RecordValues& values) {
    change(tr("new entry"), [&](Store& store) { store.addRecord(kind, values); });
    reload();
}

void Collection::changeRecord(const std::string& kind, const Record& record, const RecordValues& values) {
    change(tr("change of an entry"),
           [&](Store& store) { store.changeRecord(kind, record.id, record.version, values); });
    reload();
}

void Collection::removeRecord(const std::string& kind, const Record& record) {
    change(tr("entry taken out"), [&](Store& store) { store.removeRecord(kind, record.id, record.version); });
    reload();
}

TableImport Collection::importTable(const std::filesystem::path& file, const std::string& kind, DayOrder days,
                                    bool write) {
    TableImport table;
    TableImportOptions options;
    options.dayOrder = days;
    options.write = write;
    if (!write) return ringrule::importTable(*store_, file, kind, options);
    change(tr("table read in"), [&](Store& store) { table = ringrule::importTable(store, file, kind, options); });
    reload();
    return table;
}

void Collection::addBoxCheck(const BoxCheckRecord& check) {
    store_->addBoxCheck(check);
    // A box that fails casts doubt on the measures taken with it.
    emit measuresChanged();
}

void Collection::decide(const Decision& decision) {
    change(tr("decision"), [&](Store& store) { store.addDecision(decision); });
    emit decisionsChanged();
}

void Collection::takeBack(const Decision& decision) {
    change(tr("decision taken back"),
           [&](Store& store) { store.removeRecord("decision", decision.number, decision.version); });
    emit decisionsChanged();
}

void Collection::addBrood(const Brood& brood) {
    change(tr("new brood %1").arg(asQt(brood.code)), [&](Store& store) { store.addBrood(brood); });
    emit measuresChanged();
}

void Collection::addBroodEvent(const BroodEvent& event) {
    change(tr("note of a brood"), [&](Store& store) { store.addBroodEvent(event); });
    emit measuresChanged();
}

void Collection::settle(const StoredPhoto& photo, const std::vector<StoredMeasure>& added,
                        const std::vector<MeasureId>& accepted, const std::vector<StateSpell>& states) {
    const std::vector<StateSpell> known = store_->states();
    const auto onRecord = [&](const StateSpell& state) {
        return std::any_of(known.begin(), known.end(), [&](const StateSpell& spell) {
            return spell.animal == state.animal && spell.state == state.state && spell.from <= state.from &&
                   (!spell.to || state.from <= *spell.to);
        });
    };
    const auto body = [&](Store& store) {
        for (const StoredMeasure& measure : added) store.addMeasure(measure);
        for (const MeasureId measure : accepted) store.setAccepted(measure, true);
        for (const StateSpell& state : states)
            if (!onRecord(state)) store.addState(state);
    };
    // An animal that was missed and is added now is a reading: readings are never removed, so there is no way back.
    const bool allCorrections =
        std::all_of(added.begin(), added.end(), [](const StoredMeasure& m) { return m.replaces.has_value(); });
    if (allCorrections)
        change(tr("acceptance of %1").arg(asQt(photo.originalName)), body, photo.id);
    else
        store_->together([&] { body(*store_); });
    emit photoChanged(photo.id);
    emit measuresChanged();
}

void Collection::assign(const StoredPhoto& photo, MeasureId measure, std::optional<AnimalId> animal) {
    change(
        tr("animal of %1").arg(asQt(photo.originalName)), [&](Store& store) { store.assignAnimal(measure, animal); },
        photo.id);
    emit photoChanged(photo.id);
    emit measuresChanged();
}

}  // namespace ringrule
