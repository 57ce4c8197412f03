// SPDX-License-Identifier: GPL-3.0-or-later
// What a keeper changes of an animal on its page.
#include <QMenu>
#include <algorithm>

#include "app/animals_page.h"
#include "app/new_animal_dialog.h"
#include "app/record_dialog.h"
#include "ringrule/error.h"
#include "ui_animals_page.h"

namespace ringrule {
namespace {

/// The fields of a kind without those that the page knows itself.
std::vector<RecordField> fieldsOf(const std::string& kind, std::initializer_list<std::string_view> without) {
    std::vector<RecordField> fields;
    for (const RecordField& field : recordKind(kind).fields)
        if (std::find(without.begin(), without.end(), field.name) == without.end()) fields.push_back(field);
    return fields;
}

RecordField dayField() {
    return *recordKind("note").field("on_day");
}

}  // namespace

void AnimalsPage::attempt(const std::function<void()>& action) {
    try {
        action();
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void AnimalsPage::addMenus() {
    auto* note = new QMenu(ui_->noteButton);
    for (const std::string& kind : animalEventKinds())
        if (kind != "stay")
            note->addAction(eventKindWords(kind) + QStringLiteral("…"), this, [this, kind] { askForEvent(kind); });
    ui_->noteButton->setMenu(note);
    auto* change = new QMenu(ui_->changeButton);
    change->addAction(tr("What is known of it…"), this, &AnimalsPage::askForFacts);
    change->addAction(tr("Move to another tank…"), this, &AnimalsPage::askForMove);
    change->addSeparator();
    change->addAction(tr("Make one with another animal…"), this, &AnimalsPage::askForMerge);
    change->addAction(tr("Give later sessions to a new animal…"), this, &AnimalsPage::askForSplit);
    ui_->changeButton->setMenu(change);
    connect(ui_->newAnimalButton, &QPushButton::clicked, this, &AnimalsPage::askForAnimal);
    const auto row = [this] { return ui_->eventTable->currentIndex().row(); };
    connect(ui_->editEventButton, &QPushButton::clicked, this, [this, row] { editEvent(row()); });
    connect(ui_->removeEventButton, &QPushButton::clicked, this, [this, row] { takeOutEvent(row()); });
    connect(ui_->eventTable, &QTableView::activated, this, [this](const QModelIndex& at) { editEvent(at.row()); });
}

void AnimalsPage::askForAnimal() {
    NewAnimalDialog dialog(collection_, this);
    if (dialog.exec() != QDialog::Accepted) return;
    attempt([&] { collection_.addAnimal(dialog.animal(), dialog.tankCode(), dialog.since()); });
}

void AnimalsPage::askForFacts() {
    const auto animal = selected();
    if (!animal) return;
    const auto record = collection_.store().record("animal", animal->value);
    if (!record) return;
    RecordDialog dialog(
        collection_, tr("What is known of %1").arg(collection_.animalCode(animal)), {},
        fieldsOf("animal", {"hatched_sd_days"}), record->values,
        [&](const RecordValues& values) { collection_.changeRecord("animal", *record, values); }, this);
    dialog.exec();
}

void AnimalsPage::askForMove() {
    const auto animal = selected();
    if (!animal) return;
    RecordDialog dialog(
        collection_, tr("Move %1 to another tank").arg(collection_.animalCode(animal)),
        tr("From that day on it is compared with the animals of its new tank. A code that is new makes a new tank."),
        {*recordKind("stay").field("tank"), dayField()}, {},
        [&](const RecordValues& values) {
            collection_.moveAnimal(*animal, values.at("tank"), *parseDate(values.at("on_day")));
        },
        this);
    dialog.exec();
}

void AnimalsPage::askForMerge() {
    const auto animal = selected();
    if (!animal) return;
    const QString code = collection_.animalCode(animal);
    RecordDialog dialog(
        collection_, tr("Make %1 one with another animal").arg(code),
        tr("When one animal was kept under two codes. All that is known of %1 becomes that of the other, and %1 is "
           "taken "
           "out. Undo parts them again.")
            .arg(code),
        {*recordKind("note").field("animal")}, {},
        [&](const RecordValues& values) {
            const AnimalId into{collection_.store().numberOf("animal", values.at("animal"))};
            collection_.mergeAnimals(*animal, into);
            wanted_ = into;
        },
        this);
    if (dialog.exec() == QDialog::Accepted && wanted_) select(*wanted_);
}

void AnimalsPage::askForSplit() {
    const auto animal = selected();
    if (!animal) return;
    RecordDialog dialog(
        collection_, tr("Give later sessions of %1 to a new animal").arg(collection_.animalCode(animal)),
        tr("When two animals were photographed under one code. The readings of sessions from that day on become those "
           "of "
           "the new one."),
        {*recordKind("animal").field("code"), dayField()}, {},
        [&](const RecordValues& values) {
            collection_.splitAnimal(*animal, *parseDate(values.at("on_day")), values.at("code"));
        },
        this);
    dialog.exec();
}

void AnimalsPage::askForEvent(const std::string& kind) {
    const auto animal = selected();
    if (!animal) return;
    const std::string code = collection_.animalCode(animal).toStdString();
    RecordValues known{{"keeper", collection_.keeper().toStdString()}};
    RecordDialog dialog(
        collection_, tr("%1: %2").arg(QString::fromStdString(code), eventKindWords(kind)), {},
        fieldsOf(kind, {"animal", "tank"}), known,
        [&](RecordValues values) {
            values["animal"] = code;
            collection_.addRecord(kind, values);
        },
        this);
    if (dialog.exec() == QDialog::Accepted) ui_->historyTabs->setCurrentWidget(ui_->eventsTab);
}

void AnimalsPage::editEvent(int row) {
    if (row < 0 || row >= events_.rowCount()) return;
    const Record record = events_.recordAt(row);
    const std::string kind = events_.kindAt(row);
    RecordDialog dialog(
        collection_, tr("Change entry: %1").arg(eventKindWords(kind)), {}, fieldsOf(kind, {"animal", "finding_text"}),
        record.values, [&](const RecordValues& values) { collection_.changeRecord(kind, record, values); }, this);
    dialog.exec();
}

void AnimalsPage::takeOutEvent(int row) {
    if (row < 0 || row >= events_.rowCount()) return;
    attempt([&] { collection_.removeRecord(events_.kindAt(row), events_.recordAt(row)); });
    emit news(tr("The entry was taken out. Undo (Ctrl+Z) brings it back."));
}

}  // namespace ringrule
