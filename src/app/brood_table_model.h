// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "app/brood_groups.h"
#include "app/collection.h"

namespace ringrule {

/// The plain word for a brood's event ("egg-transfer" …).
[[nodiscard]] QString broodEventWords(const std::string& event);

/// Broods with their parents, birth, young, and what is due.
class BroodTableModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Code, Species, Father, Mother, Born, Young, Animals, Length, Due, ColumnCount };

    explicit BroodTableModel(const Collection& collection, QObject* parent = nullptr);
    void show(std::vector<BroodGroup> broods, std::optional<Date> asOf);
    [[nodiscard]] const std::vector<BroodGroup>& broods() const { return broods_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const BroodGroup& brood, int column) const;

    const Collection& collection_;
    std::vector<BroodGroup> broods_;
    std::optional<Date> asOf_;
};

}  // namespace ringrule
