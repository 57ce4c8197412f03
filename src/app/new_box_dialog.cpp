// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/new_box_dialog.h"

#include <QPushButton>
#include <algorithm>

#include "app/dialog_buttons.h"
#include "app/paper_choice.h"
#include "ui_new_box_dialog.h"

namespace ringrule {
namespace {

QString textOf(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

}  // namespace

NewBoxDialog::NewBoxDialog(const CurrentBox& current, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::NewBoxDialog>()), current_(current) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    for (const NamedPlateSize& named : namedPlateSizes())
        ui_->sizeCombo->addItem(
            tr("%1 × %2 mm: %3").arg(named.size.widthMm).arg(named.size.heightMm).arg(textOf(named.use)));
    // The middle of the range suits most collections.
    ui_->sizeCombo->setCurrentIndex(2);
    ui_->toneCombo->addItems({tr("pale, for most animals"), tr("dark, for pale and clear animals")});
    fillPapers(*ui_->paperCombo);
    ui_->buttons->button(QDialogButtonBox::Save)->setText(tr("Save the plate as PDF…"));
    connect(ui_->nameEdit, &QLineEdit::textChanged, this, &NewBoxDialog::check);
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    check();
}

NewBoxDialog::~NewBoxDialog() = default;

NewBox NewBoxDialog::wanted() const {
    NewBox wanted;
    wanted.name = ui_->nameEdit->text().trimmed().toStdString();
    wanted.size = namedPlateSizes()[static_cast<std::size_t>(std::max(0, ui_->sizeCombo->currentIndex()))].size;
    wanted.sheet.tone = ui_->toneCombo->currentIndex() == 1 ? PlateTone::Dark : PlateTone::Pale;
    wanted.sheet.paper = chosenPaper(*ui_->paperCombo);
    return wanted;
}

void NewBoxDialog::check() {
    const std::string name = wanted().name;
    QString problem;
    if (name.empty()) problem = tr("Give the box a name of its own.");
    for (const BoxFile& file : current_.files())
        if (file.box.name == name) problem = tr("There is a box of this name already.");
    ui_->problemLabel->setText(problem);
    ui_->buttons->button(QDialogButtonBox::Save)->setEnabled(problem.isEmpty());
}

}  // namespace ringrule
