// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/settings_dialog.h"

#include <QDoubleSpinBox>
#include <QLabel>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "app/dialog_buttons.h"
#include "app/language.h"
#include "ringrule/judge/judge_rules.h"
#include "ui_settings_dialog.h"

namespace ringrule {
namespace {

/// A threshold that a keeper may want to turn, in plain words. All others are in the collection's species file.
struct Offered {
    const char* name;
    QString words;
};

std::vector<Offered> offered() {
    return {
        {"lag_sds", SettingsDialog::tr("Behind: standard deviations below its tankmates' growth")},
        {"lag_least_part", SettingsDialog::tr("Behind: least part of the tankmates' growth that matters")},
        {"thin_change_sds", SettingsDialog::tr("Thin: standard errors below its own past")},
        {"refused_days", SettingsDialog::tr("Not feeding: days running on which food was refused")},
        {"settle_days", SettingsDialog::tr("Days after a change of food that are not judged")},
        {"told_for_days", SettingsDialog::tr("Days for which a finding is told after the last session")},
    };
}

}  // namespace

SettingsDialog::SettingsDialog(Settings settings, const JudgeOptions* thresholds, QWidget* parent)
    : QDialog(parent), ui_(std::make_unique<Ui::SettingsDialog>()), settings_(std::move(settings)) {
    ui_->setupUi(this);
    nameButtons(*ui_->buttons);
    ui_->keeperEdit->setText(settings_.keeper);
    fillViews();
    ui_->thresholdsHeading->setVisible(thresholds != nullptr);
    ui_->thresholdsLead->setVisible(thresholds != nullptr);
    if (thresholds != nullptr) addThresholds(*thresholds);
    ui_->buttons->button(QDialogButtonBox::Save)->setProperty("role", "primary");
    connect(ui_->buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(ui_->buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

SettingsDialog::~SettingsDialog() = default;

void SettingsDialog::fillViews() {
    ui_->daysCombo->addItems(
        {QStringLiteral("2031-01-06"), QStringLiteral("06.01.2031"), QStringLiteral("01/06/2031")});
    ui_->daysCombo->setCurrentIndex(static_cast<int>(settings_.days));
    ui_->coloursCombo->addItems({tr("As the system"), tr("Light"), tr("Dark")});
    ui_->coloursCombo->setCurrentIndex(static_cast<int>(settings_.colours));
    for (const int percent : kTextPercents) ui_->textCombo->addItem(tr("%1 %").arg(percent), percent);
    ui_->textCombo->setCurrentIndex(ui_->textCombo->findData(settings_.textPercent));
    ui_->languageCombo->addItem(tr("As the system"), QString());
    for (const QString& code : shippedLanguages()) ui_->languageCombo->addItem(languageName(code), code);
    ui_->languageCombo->setCurrentIndex(std::max(0, ui_->languageCombo->findData(settings_.language)));
}

void SettingsDialog::addThresholds(const JudgeOptions& thresholds) {
    const auto known = ringrule::thresholds();
    for (const Offered& one : offered()) {
        const auto found =
            std::find_if(known.begin(), known.end(), [&](const Threshold& t) { return t.name == one.name; });
        Q_ASSERT(found != known.end());
        auto* spin = new QDoubleSpinBox(this);
        spin->setObjectName(QString::fromUtf8(one.name));
        spin->setAccessibleName(one.words);
        spin->setDecimals(found->whole ? 0 : 2);
        spin->setSingleStep(found->whole ? 1.0 : found->most <= 1.0 ? 0.05 : 0.1);
        spin->setRange(found->least, found->most);
        spin->setValue(found->get(thresholds));
        auto* caption = new QLabel(one.words, this);
        caption->setBuddy(spin);
        const int row = ui_->thresholdsForm->rowCount();
        ui_->thresholdsForm->addWidget(caption, row, 0);
        ui_->thresholdsForm->addWidget(spin, row, 1);
        thresholds_.push_back({one.name, spin->value(), spin});
    }
}

Settings SettingsDialog::settings() const {
    Settings settings = settings_;
    settings.keeper = ui_->keeperEdit->text().trimmed();
    settings.days = static_cast<DayFormat>(ui_->daysCombo->currentIndex());
    settings.colours = static_cast<Colours>(ui_->coloursCombo->currentIndex());
    settings.textPercent = ui_->textCombo->currentData().toInt();
    settings.language = ui_->languageCombo->currentData().toString();
    return settings;
}

std::map<std::string, double> SettingsDialog::changedThresholds() const {
    std::map<std::string, double> changed;
    for (const Entry& entry : thresholds_)
        if (entry.spin->value() != entry.before) changed[entry.name] = entry.spin->value();
    return changed;
}

}  // namespace ringrule
