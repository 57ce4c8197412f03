// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <memory>

#include "app/collection.h"

namespace Ui {
class NewAnimalDialog;
}

namespace ringrule {

/// Asks for a new animal and the tank it lives in.
class NewAnimalDialog : public QDialog {
    Q_OBJECT

public:
    explicit NewAnimalDialog(const Collection& collection, QWidget* parent = nullptr);
    ~NewAnimalDialog() override;

    [[nodiscard]] Animal animal() const;
    [[nodiscard]] std::string tankCode() const;
    [[nodiscard]] Date since() const;

private:
    void check();

    std::unique_ptr<Ui::NewAnimalDialog> ui_;
    const Collection& collection_;
};

}  // namespace ringrule
