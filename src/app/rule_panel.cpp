// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/rule_panel.h"

#include <QDoubleSpinBox>
#include <QLocale>

#include "ui_rule_panel.h"

namespace ringrule {
namespace {

QString percent(double ratio) {
    return QLocale().toString(100.0 * ratio, 'f', 2);
}

}  // namespace

RulePanel::RulePanel(CurrentBox& current, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::RulePanel>()) {
    ui_->setupUi(this);
    for (const QDoubleSpinBox* spin :
         {ui_->acrossStatedSpin, ui_->acrossReadSpin, ui_->downStatedSpin, ui_->downReadSpin})
        connect(spin, &QDoubleSpinBox::valueChanged, this, &RulePanel::showTyped);
    connect(ui_->correctButton, &QPushButton::clicked, this, &RulePanel::correct);
    showTyped();
}

RulePanel::~RulePanel() = default;

void RulePanel::showBox() {
    ui_->acrossReadSpin->setValue(0.0);
    ui_->downReadSpin->setValue(0.0);
}

std::optional<PrintScale> RulePanel::typed() const {
    if (ui_->acrossReadSpin->value() <= 0.0 || ui_->acrossStatedSpin->value() <= 0.0) return std::nullopt;
    PrintScale scale;
    scale.across = ui_->acrossReadSpin->value() / ui_->acrossStatedSpin->value();
    const bool down = ui_->downReadSpin->value() > 0.0 && ui_->downStatedSpin->value() > 0.0;
    scale.down = down ? ui_->downReadSpin->value() / ui_->downStatedSpin->value() : scale.across;
    return scale;
}

void RulePanel::showTyped() {
    const std::optional<PrintScale> scale = typed();
    ui_->correctButton->setEnabled(scale.has_value());
    ui_->resultLabel->setText(
        scale ? tr("Printed at %1 % across and %2 % down.").arg(percent(scale->across), percent(scale->down))
              : tr("Type what the rule reads. A bar that is as long as it says is typed in too."));
}

void RulePanel::correct() {
    const PrintScale scale = *typed();
    if (attempt([&] { current_.correctPrint(scale); }))
        emit news(tr("The plate in the box file is corrected: printed at %1 % across and %2 % down.")
                      .arg(percent(scale.across), percent(scale.down)));
}

}  // namespace ringrule
