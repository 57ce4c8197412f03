// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure_table_model.h"

#include <QFont>

#include "app/core_text.h"
#include "app/day_text.h"

namespace ringrule {

void MeasureTableModel::setRows(std::vector<MeasureRow> rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

void MeasureTableModel::showBefore(std::optional<Measurement> before, std::optional<Date> on) {
    beginResetModel();
    before_ = before ? measureRows(*before) : std::vector<MeasureRow>();
    beforeOn_ = on;
    endResetModel();
}

int MeasureTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int MeasureTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QString MeasureTableModel::beforeOf(const std::string& name) const {
    for (const MeasureRow& row : before_)
        if (row.name == name && row.value.known()) return numberText(row.value);
    return QStringLiteral("–");
}

QVariant MeasureTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const MeasureRow& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (index.column() == Name ? Qt::AlignLeft : Qt::AlignRight));
    if (role == Qt::FontRole && index.row() == 0 && index.column() != Before) {
        QFont main;
        main.setWeight(QFont::DemiBold);
        return main;
    }
    if (role != Qt::DisplayRole) return {};
    if (index.column() == Before) return beforeOf(row.name);
    if (index.column() == Name)
        // Millimetres are said once, over the column.
        return row.unit.empty() || row.unit == "mm"
                   ? coreText(row.name)
                   : coreText(row.name) + QStringLiteral(", ") + QString::fromStdString(row.unit);
    return row.value.known() ? numberText(row.value) : tr("cannot tell");
}

QVariant MeasureTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (section == Name ? Qt::AlignLeft : Qt::AlignRight));
    if (role == Qt::ToolTipRole && section == Before) return tr("The last session before this one that counts");
    if (role != Qt::DisplayRole) return {};
    if (section == Name) return tr("in mm");
    if (section == Now) return tr("Now");
    return beforeOn_ ? dayText(*beforeOn_) : tr("Last time");
}

}  // namespace ringrule
