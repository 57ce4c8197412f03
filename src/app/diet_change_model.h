// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "app/collection.h"
#include "ringrule/judge/diets.h"

namespace ringrule {

/// Animals before and after their latest change of food.
class DietChangeModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        Code,
        ChangedOn,
        From,
        To,
        RateBefore,
        RateAfter,
        RateVerdict,
        ConditionBefore,
        ConditionAfter,
        ConditionVerdict,
        ColumnCount
    };

    explicit DietChangeModel(const Collection& collection, QObject* parent = nullptr);

    void show(std::vector<DietChange> changes);
    [[nodiscard]] const DietChange& change(int row) const { return changes_[static_cast<std::size_t>(row)]; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const DietChange& change, int column) const;

    const Collection& collection_;
    std::vector<DietChange> changes_;
};

}  // namespace ringrule
