// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ringrule/growth/observation.h"

namespace ringrule {

/// One animal's sessions, newest first.
class HistoryTableModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Day, Age, Length, Depth, DepthRatio, GirthRatio, Belly, Photos, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    void show(std::vector<Observation> observations);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<Observation> observations_;
};

}  // namespace ringrule
