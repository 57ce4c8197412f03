// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "app/brood_table_model.h"

namespace Ui {
class BroodsPage;
}

namespace ringrule {

/// Broods: births, what is due, and sizes against age.
class BroodsPage : public QWidget {
    Q_OBJECT

public:
    explicit BroodsPage(Collection& collection, QWidget* parent = nullptr);
    ~BroodsPage() override;

signals:
    void problem(const QString& sentence);

private:
    void showReview();
    void showBrood(int row);
    void askForBrood();
    void askForEvent();
    [[nodiscard]] const BroodRecord* recordOf(const BroodGroup& brood) const;

    std::unique_ptr<Ui::BroodsPage> ui_;
    Collection& collection_;
    BroodTableModel broods_;
};

}  // namespace ringrule
