// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "app/diet_change_model.h"
#include "app/diet_group_model.h"

namespace Ui {
class DietsPage;
}

namespace ringrule {

/// Diets side by side, and each animal before and after its food was changed.
class DietsPage : public QWidget {
    Q_OBJECT

public:
    explicit DietsPage(Collection& collection, QWidget* parent = nullptr);
    ~DietsPage() override;

signals:
    void cautionsWanted();

private:
    void askFor(const std::string& kind, const QString& title);
    void showReview();
    void showChange(int row);
    void fillSpecies();
    void compare();

    std::unique_ptr<Ui::DietsPage> ui_;
    Collection& collection_;
    DietChangeModel changes_;
    DietGroupModel groups_;
};

}  // namespace ringrule
