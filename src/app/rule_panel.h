// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>

#include "app/box_panel.h"

namespace Ui {
class RulePanel;
}

namespace ringrule {

/// What a steel rule reads on the print, typed in.
class RulePanel : public BoxPanel {
    Q_OBJECT

public:
    explicit RulePanel(CurrentBox& current, QWidget* parent = nullptr);
    ~RulePanel() override;
    void showBox() override;

private:
    /// Measured over stated, once the bar across is typed in.
    [[nodiscard]] std::optional<PrintScale> typed() const;
    void showTyped();
    void correct();

    std::unique_ptr<Ui::RulePanel> ui_;
};

}  // namespace ringrule
