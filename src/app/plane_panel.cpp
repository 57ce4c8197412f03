// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plane_panel.h"

#include "ui_plane_panel.h"

namespace ringrule {

PlanePanel::PlanePanel(CurrentBox& current, QWidget* parent)
    : BoxPanel(current, parent), ui_(std::make_unique<Ui::PlanePanel>()) {
    ui_->setupUi(this);
    connect(ui_->saveButton, &QPushButton::clicked, this, [this] {
        const AnimalPlane plane{ui_->distanceSpin->value(), ui_->toleranceSpin->value()};
        if (attempt([&] { current_.setAnimalPlane(plane); })) emit news(tr("The animal's plane is in the box file."));
    });
}

PlanePanel::~PlanePanel() = default;

void PlanePanel::showBox() {
    ui_->distanceSpin->setValue(current_.box().animalPlane.distanceFromPlateMm);
    ui_->toleranceSpin->setValue(current_.box().animalPlane.toleranceMm);
}

}  // namespace ringrule
