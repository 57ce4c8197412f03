// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "app/box_panel.h"

namespace Ui {
class PlanePanel;
}

namespace ringrule {

/// Where the animal hangs before the plate.
class PlanePanel : public BoxPanel {
    Q_OBJECT

public:
    explicit PlanePanel(CurrentBox& current, QWidget* parent = nullptr);
    ~PlanePanel() override;
    void showBox() override;

private:
    std::unique_ptr<Ui::PlanePanel> ui_;
};

}  // namespace ringrule
