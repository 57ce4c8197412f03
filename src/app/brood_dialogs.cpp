// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/brood_dialogs.h"

#include <QPushButton>
#include <algorithm>

#include "app/brood_table_model.h"
#include "app/day_text.h"
#include "app/dialog_buttons.h"
#include "ui_brood_dialog.h"
#include "ui_brood_event_dialog.h"

namespace ringrule {
namespace {

std::optional<AnimalId> chosenAnimal(const QComboBox& combo) {
    const AnimalId id{combo.currentData().toLongLong()};
    return id.value == 0 ? std::nullopt : std::optional(id);
}

}  // namespace

BroodDialog::BroodDialog(const Collection& collection, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::BroodDialog>()), collection_(collection) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    writeDaysAsChosen(*this);
    for (QComboBox* combo : {ui_->fatherCombo, ui_->motherCombo}) {
        combo->addItem(tr("not known"), QVariant::fromValue<qlonglong>(0));
        const Sex other = combo == ui_->fatherCombo ? Sex::Female : Sex::Male;
        for (const Animal& animal : collection.animals())
            if (animal.sex != other)
                combo->addItem(QString::fromStdString(animal.code), QVariant::fromValue<qlonglong>(animal.id.value));
    }
    ui_->tankCombo->addItem(tr("not known"), QVariant::fromValue<qlonglong>(0));
    for (const Tank& tank : collection.tanks())
        ui_->tankCombo->addItem(QString::fromStdString(tank.code), QVariant::fromValue<qlonglong>(tank.id.value));
    connect(ui_->fatherCombo, &QComboBox::currentIndexChanged, this, [this] {
        const auto father = chosenAnimal(*ui_->fatherCombo);
        if (const Animal* known = father ? collection_.animal(*father) : nullptr; known != nullptr)
            ui_->speciesEdit->setText(QString::fromStdString(known->species));
    });
    connect(ui_->codeEdit, &QLineEdit::textChanged, this, &BroodDialog::check);
    connect(ui_->speciesEdit, &QLineEdit::textChanged, this, &BroodDialog::check);
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    check();
}

BroodDialog::~BroodDialog() = default;

Brood BroodDialog::brood() const {
    Brood brood;
    brood.code = ui_->codeEdit->text().trimmed().toStdString();
    brood.species = ui_->speciesEdit->text().trimmed().toStdString();
    brood.father = chosenAnimal(*ui_->fatherCombo);
    brood.mother = chosenAnimal(*ui_->motherCombo);
    const TankId tank{ui_->tankCombo->currentData().toLongLong()};
    if (tank.value != 0) brood.tank = tank;
    return brood;
}

void BroodDialog::check() {
    const Brood wanted = brood();
    const auto& known = collection_.review().broodRecords;
    QString problem;
    if (wanted.species.empty()) problem = tr("Give the species: how long a brood is carried depends on it.");
    if (std::any_of(known.begin(), known.end(), [&](const BroodRecord& r) { return r.brood.code == wanted.code; }))
        problem = tr("There is a brood of this code already.");
    if (wanted.code.empty()) problem = tr("Give the brood a code of its own.");
    ui_->problemLabel->setText(problem);
    ui_->buttons->button(QDialogButtonBox::Save)->setEnabled(problem.isEmpty());
}

BroodEventDialog::BroodEventDialog(const Brood& brood, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::BroodEventDialog>()), brood_(brood.id) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    writeDaysAsChosen(*this);
    ui_->titleLabel->setText(tr("Brood %1").arg(QString::fromStdString(brood.code)));
    for (const char* event : {"courting", "egg-transfer", "carrying", "birth", "count"})
        ui_->eventCombo->addItem(broodEventWords(event), QString::fromUtf8(event));
    ui_->dayEdit->setDate(QDate::currentDate());
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

BroodEventDialog::~BroodEventDialog() = default;

BroodEvent BroodEventDialog::event() const {
    BroodEvent event;
    event.brood = brood_;
    event.event = ui_->eventCombo->currentData().toString().toStdString();
    event.on = Date(std::chrono::days(QDate(1970, 1, 1).daysTo(ui_->dayEdit->date())));
    if (ui_->countSpin->value() >= 0) event.count = ui_->countSpin->value();
    event.note = ui_->noteEdit->text().trimmed().toStdString();
    return event;
}

}  // namespace ringrule
