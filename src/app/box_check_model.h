// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ringrule/optics/box_history.h"

namespace ringrule {

/// The checks of one box, newest first.
class BoxCheckModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Day, Verdict, Rod, Found, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    /// `checks` oldest first.
    void show(std::vector<PastBoxCheck> checks);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<PastBoxCheck> checks_;
};

}  // namespace ringrule
