// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <vector>

#include "ringrule/husbandry/records.h"

namespace ringrule {

/// Animals to tick for a chart.
class AnimalChoiceModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    /// Shows these animals, all ticked.
    void show(std::vector<Animal> animals);
    [[nodiscard]] const Animal& animal(int row) const { return rows_[static_cast<std::size_t>(row)].animal; }
    [[nodiscard]] bool ticked(int row) const { return rows_[static_cast<std::size_t>(row)].ticked; }
    [[nodiscard]] int rowOf(AnimalId animal) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    struct Row {
        Animal animal;
        bool ticked = true;
    };
    std::vector<Row> rows_;
};

}  // namespace ringrule
