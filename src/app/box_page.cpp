// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/box_page.h"
#include "app/core_text.h"

#include <QFileDialog>
#include <QSignalBlocker>

#include "app/check_panel.h"
#include "app/lens_panel.h"
#include "app/new_box_dialog.h"
#include "app/plane_panel.h"
#include "app/print_panel.h"
#include "app/rule_panel.h"
#include "app/two_line_delegate.h"
#include "app/water_panel.h"
#include "ringrule/error.h"
#include "ui_box_page.h"

namespace ringrule {

BoxPage::BoxPage(Collection& collection, JobRunner& job, QWidget* parent)
    : QWidget(parent), ui_(std::make_unique<Ui::BoxPage>()), current_(collection) {
    ui_->setupUi(this);
    ui_->stepList->setModel(&steps_);
    ui_->stepList->setItemDelegate(new TwoLineDelegate(this));
    addPanels(job);
    connectForm();
    showCurrent();
}

BoxPage::~BoxPage() = default;

void BoxPage::addPanels(JobRunner& job) {
    panels_ = {
        {SetupStepKind::Print, new PrintPanel(current_)},       {SetupStepKind::Rule, new RulePanel(current_)},
        {SetupStepKind::Lens, new LensPanel(current_, job)},    {SetupStepKind::Water, new WaterPanel(current_)},
        {SetupStepKind::AnimalPlane, new PlanePanel(current_)}, {SetupStepKind::Rod, new CheckPanel(current_, job)}};
    for (const auto& [kind, panel] : panels_) {
        ui_->panels->addWidget(panel);
        connect(panel, &BoxPanel::news, this, &BoxPage::news);
        connect(panel, &BoxPanel::problem, this, &BoxPage::problem);
    }
}

void BoxPage::connectForm() {
    connect(&current_, &CurrentBox::changed, this, &BoxPage::showCurrent);
    connect(ui_->boxCombo, &QComboBox::activated, &current_, &CurrentBox::choose);
    connect(ui_->newBoxButton, &QPushButton::clicked, this, &BoxPage::askForBox);
    connect(ui_->firstBoxButton, &QPushButton::clicked, this, &BoxPage::askForBox);
    connect(ui_->addBoxButton, &QPushButton::clicked, this, &BoxPage::askForBoxFile);
    connect(ui_->stepList->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& current) { stepChosen(current.row()); });
    connect(ui_->backButton, &QPushButton::clicked, this, [this] { goBy(-1); });
    connect(ui_->onButton, &QPushButton::clicked, this, [this] { goBy(1); });
}

void BoxPage::showCurrent() {
    {
        const QSignalBlocker quiet(ui_->boxCombo);
        ui_->boxCombo->clear();
        for (const BoxFile& file : current_.files()) ui_->boxCombo->addItem(QString::fromStdString(file.box.name));
        ui_->boxCombo->setCurrentIndex(current_.index());
    }
    const bool any = current_.index() >= 0;
    ui_->boxCombo->setEnabled(any);
    ui_->sides->setCurrentWidget(any ? ui_->fullSide : ui_->emptySide);
    steps_.show(any ? current_.steps() : std::vector<SetupStep>());
    if (!any) return;
    for (const auto& [kind, panel] : panels_) panel->showBox();
    const bool other = shown_ != current_.index() || !ui_->stepList->currentIndex().isValid();
    shown_ = current_.index();
    if (!other) {
        stepChosen(ui_->stepList->currentIndex().row());
        return;
    }
    // A box that is set up shows its check, any other the next thing to do.
    const std::optional<SetupStep> next = nextSetupStep(current_.steps());
    showStep(next ? next->kind : SetupStepKind::Rod);
}

void BoxPage::showStep(SetupStepKind kind) {
    ui_->stepList->setCurrentIndex(steps_.index(steps_.rowOf(kind)));
}

void BoxPage::stepChosen(int row) {
    if (row < 0) return;
    const SetupStep& step = steps_.step(row);
    ui_->stepLabel->setText(coreText(step.title));
    ui_->stateLabel->setText(setupStateSign(step.state) + QStringLiteral("  ") + setupStateWords(step.state));
    ui_->foundLabel->setText(coreText(step.found));
    ui_->adviceLabel->setText(coreText(step.advice));
    ui_->adviceLabel->setVisible(!step.advice.empty());
    ui_->panels->setCurrentWidget(panels_.at(step.kind));
    ui_->backButton->setEnabled(row > 0);
    ui_->onButton->setEnabled(row + 1 < steps_.rowCount());
}

void BoxPage::goBy(int rows) {
    ui_->stepList->setCurrentIndex(steps_.index(ui_->stepList->currentIndex().row() + rows));
}

void BoxPage::askForBox() {
    NewBoxDialog dialog(current_, this);
    if (dialog.exec() != QDialog::Accepted) return;
    NewBox wanted = dialog.wanted();
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the scale plate"), QStringLiteral("plate.pdf"),
                                                      tr("Pages (*.pdf)"));
    if (path.isEmpty()) return;
    wanted.pdf = path.toStdString();
    try {
        current_.make(wanted);
        emit news(
            tr("The plate was saved in %1. Print it at 100 %, then measure its bars with a steel rule.").arg(path));
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

void BoxPage::askForBoxFile() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Box file"), {}, tr("Box files (*.json)"));
    if (path.isEmpty()) return;
    try {
        current_.add(path.toStdString());
    } catch (const Error& error) {
        emit problem(QString::fromStdString(error.what()));
    }
}

}  // namespace ringrule
