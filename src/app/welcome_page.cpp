// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/welcome_page.h"

#include "app/cautions.h"
#include "ui_welcome_page.h"

namespace ringrule {

WelcomePage::WelcomePage(QWidget* parent) : QWidget(parent), ui_(std::make_unique<Ui::WelcomePage>()) {
    ui_->setupUi(this);
    ui_->cautionLabel->setText(handlingCaution());
    for (QCommandLinkButton* button : {ui_->openButton, ui_->createButton, ui_->demoButton}) button->setIcon(QIcon());
    connect(ui_->openButton, &QPushButton::clicked, this, &WelcomePage::openWanted);
    connect(ui_->createButton, &QPushButton::clicked, this, &WelcomePage::createWanted);
    connect(ui_->demoButton, &QPushButton::clicked, this, &WelcomePage::demoWanted);
    connect(ui_->recentList, &QListWidget::itemActivated, this,
            [this](const QListWidgetItem* item) { emit folderWanted(item->text()); });
    connect(ui_->cautionLabel, &QLabel::linkActivated, this, &WelcomePage::cautionsWanted);
    showRecent({});
}

WelcomePage::~WelcomePage() = default;

void WelcomePage::showRecent(const QStringList& folders) {
    ui_->recentList->clear();
    ui_->recentList->addItems(folders);
    ui_->recentHeading->setVisible(!folders.isEmpty());
    ui_->recentList->setVisible(!folders.isEmpty());
}

}  // namespace ringrule
