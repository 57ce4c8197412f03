// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <memory>

#include "app/collection.h"
#include "ringrule/husbandry/brood.h"

namespace Ui {
class BroodDialog;
class BroodEventDialog;
}  // namespace Ui

namespace ringrule {

/// Asks for a new brood.
class BroodDialog : public QDialog {
    Q_OBJECT

public:
    explicit BroodDialog(const Collection& collection, QWidget* parent = nullptr);
    ~BroodDialog() override;
    [[nodiscard]] Brood brood() const;

private:
    void check();

    std::unique_ptr<Ui::BroodDialog> ui_;
    const Collection& collection_;
};

/// Asks for something that happened to a brood.
class BroodEventDialog : public QDialog {
    Q_OBJECT

public:
    explicit BroodEventDialog(const Brood& brood, QWidget* parent = nullptr);
    ~BroodEventDialog() override;
    [[nodiscard]] BroodEvent event() const;

private:
    std::unique_ptr<Ui::BroodEventDialog> ui_;
    BroodId brood_;
};

}  // namespace ringrule
