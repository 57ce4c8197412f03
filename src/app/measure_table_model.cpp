// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure_table_model.h"
#include "app/core_text.h"

#include <QFont>

namespace ringrule {

void MeasureTableModel::setRows(std::vector<MeasureRow> rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

int MeasureTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int MeasureTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : 2;
}

QVariant MeasureTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const MeasureRow& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (index.column() == 0 ? Qt::AlignLeft : Qt::AlignRight));
    if (role == Qt::FontRole && index.row() == 0) {
        QFont main;
        main.setWeight(QFont::DemiBold);
        return main;
    }
    if (role != Qt::DisplayRole) return {};
    if (index.column() == 0) return coreText(row.name);
    return QString::fromStdString(numberWithInterval(row.value, row.unit));
}

}  // namespace ringrule
