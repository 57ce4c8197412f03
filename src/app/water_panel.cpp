// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/water_panel.h"

#include <QDoubleSpinBox>
#include <QLocale>
#include <cmath>

#include "ringrule/optics/water.h"
#include "ui_water_panel.h"

namespace ringrule {
namespace {

enum Window { Acrylic, Glass, OtherPane, Surface };

/// At 589 nm, as makers state them; panes differ by a few parts in a thousand.
constexpr double kAcrylicIndex = 1.4917;
constexpr double kGlassIndex = 1.52;

int windowOf(const Media& media) {
    if (media.windowThicknessMm == 0.0) return Surface;
    if (std::abs(media.windowIndex - kAcrylicIndex) < 0.005) return Acrylic;
    return std::abs(media.windowIndex - kGlassIndex) < 0.005 ? Glass : OtherPane;
}

}  // namespace

WaterPanel::WaterPanel(CurrentBox& current, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::WaterPanel>()) {
    ui_->setupUi(this);
    ui_->windowCombo->addItems(
        {tr("acrylic"), tr("glass"), tr("another pane, index"), tr("none: through the water's surface")});
    connect(ui_->windowCombo, &QComboBox::currentIndexChanged, this, &WaterPanel::windowChosen);
    for (const QDoubleSpinBox* spin :
         {ui_->indexSpin, ui_->thicknessSpin, ui_->cameraSpin, ui_->depthSpin, ui_->salinitySpin, ui_->temperatureSpin})
        connect(spin, &QDoubleSpinBox::valueChanged, this, &WaterPanel::showTyped);
    connect(ui_->saveButton, &QPushButton::clicked, this, [this] {
        const Media media = typed();
        if (attempt([&] { current_.setWater(media); }))
            emit news(tr("Window, water and distances are in the box file."));
    });
    windowChosen(ui_->windowCombo->currentIndex());
}

WaterPanel::~WaterPanel() = default;

void WaterPanel::showBox() {
    const std::optional<Media>& media = current_.box().media;
    const Media shown = media.value_or(Media{0.0, 5.0, kAcrylicIndex, 0.0, 32.0, 24.0});
    ui_->windowCombo->setCurrentIndex(windowOf(shown));
    ui_->indexSpin->setValue(shown.windowIndex);
    ui_->thicknessSpin->setValue(shown.windowThicknessMm);
    ui_->cameraSpin->setValue(shown.cameraToWindowMm);
    ui_->depthSpin->setValue(shown.waterToPlateMm);
    ui_->salinitySpin->setValue(shown.salinityPpt);
    ui_->temperatureSpin->setValue(shown.temperatureC);
    showTyped();
}

void WaterPanel::windowChosen(int index) {
    ui_->indexSpin->setVisible(index == OtherPane);
    ui_->thicknessSpin->setEnabled(index != Surface);
    if (index == Acrylic) ui_->indexSpin->setValue(kAcrylicIndex);
    if (index == Glass) ui_->indexSpin->setValue(kGlassIndex);
    if (index == Surface) ui_->thicknessSpin->setValue(0.0);
    ui_->cameraCaption->setText(index == Surface ? tr("&Camera to surface") : tr("&Camera to window"));
    ui_->depthCaption->setText(index == Surface ? tr("W&ater, surface to plate") : tr("W&ater, window to plate"));
    showTyped();
}

Media WaterPanel::typed() const {
    Media media;
    media.windowThicknessMm = ui_->thicknessSpin->value();
    media.windowIndex = media.windowThicknessMm > 0.0 ? ui_->indexSpin->value() : 1.0;
    media.cameraToWindowMm = ui_->cameraSpin->value();
    media.waterToPlateMm = ui_->depthSpin->value();
    media.salinityPpt = ui_->salinitySpin->value();
    media.temperatureC = ui_->temperatureSpin->value();
    return media;
}

void WaterPanel::showTyped() {
    const Media media = typed();
    const bool complete = media.cameraToWindowMm > 0.0 && media.waterToPlateMm > 0.0;
    ui_->saveButton->setEnabled(complete);
    ui_->indexLabel->setText(tr("Such water bends light with an index of %1 (Quan & Fry 1995).%2")
                                 .arg(QLocale().toString(waterIndex(media.salinityPpt, media.temperatureC), 'f', 4))
                                 .arg(complete ? QString() : tr(" Both distances are still to be typed in.")));
}

}  // namespace ringrule
