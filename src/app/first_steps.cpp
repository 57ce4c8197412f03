// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/first_steps.h"

#include <QCommandLinkButton>

#include "ui_first_steps.h"

namespace ringrule {

FirstSteps::FirstSteps(QWidget* parent) : QWidget(parent), ui_(std::make_unique<Ui::FirstSteps>()) {
    ui_->setupUi(this);
    connect(ui_->boxStepButton, &QPushButton::clicked, this, &FirstSteps::boxWanted);
    connect(ui_->animalsStepButton, &QPushButton::clicked, this, &FirstSteps::animalsWanted);
    connect(ui_->startButton, &QPushButton::clicked, this, &FirstSteps::sessionWanted);
    for (QCommandLinkButton* button : {ui_->boxStepButton, ui_->animalsStepButton, ui_->startButton})
        button->setIcon(QIcon());
}

FirstSteps::~FirstSteps() = default;

void FirstSteps::showState(const Collection& collection) {
    const auto step = [](bool done, const QString& words) { return done ? QStringLiteral("✓  ") + words : words; };
    ui_->boxStepButton->setText(step(!collection.boxFiles().empty(), tr("Set up the box")));
    ui_->animalsStepButton->setText(step(!collection.animals().empty(), tr("Add the animals")));
}

}  // namespace ringrule
