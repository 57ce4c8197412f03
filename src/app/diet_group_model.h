// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "app/collection.h"
#include "ringrule/growth/diet_effect.h"
#include "ringrule/judge/diets.h"

namespace ringrule {

/// Diets side by side: growth on each as the comparison tells it, and beside it what each animal grew by itself.
class DietGroupModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Name, Animals, Tanks, Growth, Each, ColumnCount };

    explicit DietGroupModel(const Collection& collection, QObject* parent = nullptr);
    /// `ownRates`: each animal's own rate, by diet; a diet without any shows none.
    void show(const DietEffects& effects, const std::vector<DietGroup>& ownRates);
    void clear() { show({}, {}); }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        DietGrowth growth;
        QString each;
    };
    [[nodiscard]] QString growthText(const DietGrowth& growth) const;
    [[nodiscard]] QString headerHint(int section) const;

    const Collection& collection_;
    std::vector<Row> rows_;
    EffectUnit unit_ = EffectUnit::MmPerDay;
    bool tanksAreUnits_ = false;
};

}  // namespace ringrule
