// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QPolygonF>
#include <vector>

#include "app/collection.h"

namespace ringrule {

/// Every animal of the collection with its newest measures.
class AnimalTableModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Code, Look, Species, TankColumn, Card, Length, Growth, Condition, LastSeen, ColumnCount };
    static constexpr int kSortRole = Qt::UserRole + 1;
    static constexpr int kLineRole = Qt::UserRole + 2;    ///< lengths over days, for a small line: QPolygonF
    static constexpr int kAnimalRole = Qt::UserRole + 3;  ///< the animal's number
    static constexpr int kLookRole = Qt::UserRole + 4;    ///< whether it needs a look

    explicit AnimalTableModel(const Collection& collection, QObject* parent = nullptr);

    [[nodiscard]] AnimalId animalAt(int row) const { return rows_[static_cast<std::size_t>(row)].animal.id; }
    [[nodiscard]] int rowOf(AnimalId animal) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        Animal animal;
        QString tank;
        Estimate lengthMm;
        Estimate condition;
        QPolygonF lengths;  ///< day and length of each session
        std::optional<Date> lastSeen;
        QString look;  ///< why it needs a look
    };

    void rebuild();
    [[nodiscard]] QString text(const Row& row, int column) const;
    [[nodiscard]] QVariant sortKey(const Row& row, int column) const;

    const Collection& collection_;
    std::vector<Row> rows_;
};

}  // namespace ringrule
