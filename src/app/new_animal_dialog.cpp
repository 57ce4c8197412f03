// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/new_animal_dialog.h"

#include <QPushButton>
#include <algorithm>

#include "app/day_text.h"
#include "app/dialog_buttons.h"
#include "ui_new_animal_dialog.h"

namespace ringrule {
namespace {

enum HatchKnown { NotKnown, Exactly, WithinAWeek, WithinAMonth };

/// Half of what the choice says, as a standard deviation: about two of three dates lie inside.
constexpr double kWeekSdDays = 3.5;
constexpr double kMonthSdDays = 15.0;

}  // namespace

NewAnimalDialog::NewAnimalDialog(const Collection& collection, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::NewAnimalDialog>()), collection_(collection) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    writeDaysAsChosen(*this);
    ui_->shapeCombo->addItem(tr("pipefish"), "pipefish");
    ui_->shapeCombo->addItem(tr("seahorse"), "seahorse");
    ui_->shapeCombo->addItem(tr("other long fish"), "fish");
    ui_->sexCombo->addItems({tr("not known"), tr("female"), tr("male")});
    ui_->hatchCombo->addItems({tr("not known"), tr("on"), tr("within a week of"), tr("within a month of")});
    ui_->hatchEdit->setDate(QDate::currentDate());
    ui_->sinceEdit->setDate(QDate::currentDate());
    for (const Tank& tank : collection.tanks()) ui_->tankCombo->addItem(QString::fromStdString(tank.code));
    connect(ui_->codeEdit, &QLineEdit::textChanged, this, &NewAnimalDialog::check);
    connect(ui_->speciesEdit, &QLineEdit::textChanged, this, &NewAnimalDialog::check);
    connect(ui_->cardSpin, &QSpinBox::valueChanged, this, &NewAnimalDialog::check);
    connect(ui_->hatchCombo, &QComboBox::currentIndexChanged, this, &NewAnimalDialog::check);
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    check();
}

NewAnimalDialog::~NewAnimalDialog() = default;

Animal NewAnimalDialog::animal() const {
    Animal animal;
    animal.code = ui_->codeEdit->text().trimmed().toStdString();
    animal.name = ui_->nameEdit->text().trimmed().toStdString();
    animal.species = ui_->speciesEdit->text().trimmed().toStdString();
    animal.shape = ui_->shapeCombo->currentData().toString().toStdString();
    animal.sex = static_cast<Sex>(ui_->sexCombo->currentIndex());
    if (ui_->cardSpin->value() >= 0) animal.card = ui_->cardSpin->value();
    const int known = ui_->hatchCombo->currentIndex();
    if (known == NotKnown) return animal;
    animal.hatchedOn = dayOf(ui_->hatchEdit->date());
    animal.hatchedExactly = known == Exactly;
    if (known == WithinAWeek) animal.hatchedSdDays = kWeekSdDays;
    if (known == WithinAMonth) animal.hatchedSdDays = kMonthSdDays;
    return animal;
}

std::string NewAnimalDialog::tankCode() const {
    return ui_->tankCombo->currentText().trimmed().toStdString();
}

Date NewAnimalDialog::since() const {
    return dayOf(ui_->sinceEdit->date());
}

void NewAnimalDialog::check() {
    const Animal wanted = animal();
    QString problem;
    if (wanted.species.empty()) problem = tr("Give the species: only like animals are compared.");
    for (const Animal& known : collection_.animals()) {
        if (wanted.card && known.card == wanted.card)
            problem = tr("Card %1 belongs to %2.").arg(*wanted.card).arg(QString::fromStdString(known.code));
        if (known.code == wanted.code) problem = tr("There is an animal of this code already.");
    }
    if (wanted.code.empty()) problem = tr("Give the animal a code of its own.");
    ui_->problemLabel->setText(problem);
    ui_->hatchEdit->setEnabled(ui_->hatchCombo->currentIndex() != NotKnown);
    ui_->buttons->button(QDialogButtonBox::Save)->setEnabled(problem.isEmpty());
}

}  // namespace ringrule
