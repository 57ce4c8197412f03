// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/history_table_model.h"

#include <algorithm>

#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/sheets/number_text.h"

namespace ringrule {

void HistoryTableModel::show(std::vector<Observation> observations) {
    beginResetModel();
    observations_ = std::move(observations);
    std::reverse(observations_.begin(), observations_.end());
    endResetModel();
}

int HistoryTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(observations_.size());
}

int HistoryTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QVariant HistoryTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (index.column() == Day ? Qt::AlignLeft : Qt::AlignRight));
    const Observation& o = observations_[static_cast<std::size_t>(index.row())];
    if (role == Qt::ToolTipRole && !o.girthFair) return tr("Brooding or carrying: not judged on girth.");
    if (role != Qt::DisplayRole) return {};
    const auto number = [](const Estimate& estimate) {
        return estimate.known() ? numberText(estimate) : QStringLiteral("–");
    };
    switch (index.column()) {
        case Day:
            return dayText(o.on) + (o.girthFair ? QString() : tr("  (carrying)"));
        case Age:
            return o.ageDays ? QString::number(qRound(*o.ageDays)) : QStringLiteral("–");
        case Length:
            return number(o.standardLengthMm);
        case Depth:
            return number(o.trunkDepthMm);
        case DepthRatio:
            return number(o.depthRatio);
        case GirthRatio:
            return number(o.girthRatio);
        case Belly:
            return number(o.bellyHollowPercent);
        default:
            return o.sidePhotos;
    }
}

QVariant HistoryTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (section == Day ? Qt::AlignLeft : Qt::AlignRight));
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Day:
            return tr("Session");
        case Age:
            return tr("Age, days");
        case Length:
            return tr("Standard length, mm");
        case Depth:
            return tr("Trunk depth, mm");
        case DepthRatio:
            return tr("Depth ratio");
        case GirthRatio:
            return tr("Girth ratio");
        case Belly:
            return tr("Belly hollow, %");
        default:
            return tr("Side photos");
    }
}

}  // namespace ringrule
