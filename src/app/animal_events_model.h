// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "app/collection.h"

namespace ringrule {

/// What happened with one animal, the newest first: tanks, diets, states, notes, food, treatments, measures by hand and
/// decisions; food and treatments of its tank too, marked with the tank's code.
class AnimalEventsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Day, Kind, What, Keeper, ColumnCount };

    explicit AnimalEventsModel(const Collection& collection, QObject* parent = nullptr);

    /// Throws `Error(BadStore)`.
    void show(std::optional<AnimalId> animal);

    [[nodiscard]] const std::string& kindAt(int row) const { return rows_[static_cast<std::size_t>(row)].kind; }
    [[nodiscard]] const Record& recordAt(int row) const { return rows_[static_cast<std::size_t>(row)].record; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        std::string kind;
        Record record;
        std::string day;  ///< ISO
    };

    const Collection& collection_;
    std::vector<Row> rows_;
};

/// Kinds of records that a keeper notes of an animal, in the order of a menu.
[[nodiscard]] const std::vector<std::string>& animalEventKinds();
/// Such a kind in a keeper's words, e.g. "Feeding".
[[nodiscard]] QString eventKindWords(const std::string& kind);

}  // namespace ringrule
