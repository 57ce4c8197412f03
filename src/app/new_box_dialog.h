// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <memory>

#include "app/current_box.h"

namespace Ui {
class NewBoxDialog;
}

namespace ringrule {

/// Asks for a new measuring box: its name and the scale plate to draw for it.
class NewBoxDialog : public QDialog {
    Q_OBJECT

public:
    explicit NewBoxDialog(const CurrentBox& current, QWidget* parent = nullptr);
    ~NewBoxDialog() override;

    /// All but the place of the PDF.
    [[nodiscard]] NewBox wanted() const;

private:
    void check();

    std::unique_ptr<Ui::NewBoxDialog> ui_;
    const CurrentBox& current_;
};

}  // namespace ringrule
