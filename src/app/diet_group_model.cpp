// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diet_group_model.h"

#include <QLocale>
#include <algorithm>
#include <cmath>

namespace ringrule {
namespace {

/// "P1 0.420,  P2 0.400": each animal's own growth, the spread behind the mean.
QString eachAnimal(const DietGroup& group) {
    QStringList parts;
    for (std::size_t k = 0; k < std::min(group.codes.size(), group.mmPerDay.size()); ++k)
        parts << QStringLiteral("%1 %2").arg(QString::fromStdString(group.codes[k]),
                                             QLocale().toString(group.mmPerDay[k], 'f', 3));
    return parts.join(QStringLiteral(",  "));
}

}  // namespace

DietGroupModel::DietGroupModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {}

void DietGroupModel::show(const DietEffects& effects, const std::vector<DietGroup>& ownRates) {
    beginResetModel();
    unit_ = effects.unit;
    tanksAreUnits_ = effects.tanksAreUnits;
    rows_.clear();
    for (const DietGrowth& growth : effects.groups) {
        const auto own = std::find_if(ownRates.begin(), ownRates.end(),
                                      [&](const DietGroup& group) { return group.diet.value == growth.diet; });
        rows_.push_back({growth, own == ownRates.end() ? QString() : eachAnimal(*own)});
    }
    endResetModel();
    // The unit is in the header.
    emit headerDataChanged(Qt::Horizontal, 0, ColumnCount - 1);
}

int DietGroupModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int DietGroupModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

/// "0.361 (0.340 to 0.382)", as the command line writes it.
QString DietGroupModel::growthText(const DietGrowth& growth) const {
    const auto text = [](double value) { return QLocale().toString(value, 'f', 3).replace('-', QChar(0x2212)); };
    if (!std::isfinite(growth.rate.standardError))
        return (tanksAreUnits_ ? tr("%1, one tank alone") : tr("%1, one animal alone")).arg(text(growth.rate.value));
    return tr("%1 (%2 to %3)").arg(text(growth.rate.value), text(growth.rate.lower95), text(growth.rate.upper95));
}

QVariant DietGroupModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const bool number = index.column() > Name && index.column() < Each;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    // Of many animals the column shows the first.
    if (role == Qt::ToolTipRole && index.column() == Each) return row.each;
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case Name:
            return collection_.dietName({row.growth.diet});
        case Animals:
            return row.growth.animals;
        case Tanks:
            return row.growth.tanks;
        case Growth:
            return growthText(row.growth);
        default:
            return row.each;
    }
}

QString DietGroupModel::headerHint(int section) const {
    switch (section) {
        case Animals:
            return tr("Animals that kept one diet in one tank throughout, with lengths on two days");
        case Growth:
            return tr("Mean growth on the diet, of all its animals and sessions together, with its 95 % interval");
        case Each:
            return tr(
                "From each animal's first session of this time to its last. Growth on the diet rests on the "
                "sessions between as well, so it need not be the mean of these.");
        default:
            return {};
    }
}

QVariant DietGroupModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    const bool number = section > Name && section < Each;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::ToolTipRole) return headerHint(section);
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Name:
            return tr("Diet");
        case Animals:
            return tr("Animals");
        case Tanks:
            return tr("Tanks");
        case Growth:
            return unit_ == EffectUnit::PercentPerDay ? tr("Growth, % a day (95 %)") : tr("Growth, mm/day (95 %)");
        default:
            return tr("Each animal's own rate, mm/day");
    }
}

}  // namespace ringrule
