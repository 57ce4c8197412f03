// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "app/box_panel.h"

namespace Ui {
class PrintPanel;
}

namespace ringrule {

/// The box's plate, and the animals' cards to print.
class PrintPanel : public BoxPanel {
    Q_OBJECT

public:
    explicit PrintPanel(CurrentBox& current, QWidget* parent = nullptr);
    ~PrintPanel() override;
    void showBox() override;

private:
    void saveCards();

    std::unique_ptr<Ui::PrintPanel> ui_;
};

}  // namespace ringrule
