// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "app/box_panel.h"

namespace Ui {
class WaterPanel;
}

namespace ringrule {

/// What lies between camera and plate: window, water, distances.
class WaterPanel : public BoxPanel {
    Q_OBJECT

public:
    explicit WaterPanel(CurrentBox& current, QWidget* parent = nullptr);
    ~WaterPanel() override;
    void showBox() override;

private:
    void windowChosen(int index);
    [[nodiscard]] Media typed() const;
    void showTyped();

    std::unique_ptr<Ui::WaterPanel> ui_;
};

}  // namespace ringrule
