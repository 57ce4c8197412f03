// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "app/collection.h"
#include "ringrule/judge/diets.h"

namespace ringrule {

/// Diets side by side: the animals that kept each, and their growth.
class DietGroupModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Name, Animals, Tanks, Mean, Each, ColumnCount };

    explicit DietGroupModel(const Collection& collection, QObject* parent = nullptr);
    void show(std::vector<DietGroup> groups);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    const Collection& collection_;
    std::vector<DietGroup> groups_;
};

}  // namespace ringrule
