// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diet_group_model.h"

#include <QLocale>
#include <QObject>
#include <algorithm>
#include <cmath>

#include "ringrule/statistics/distributions.h"

namespace ringrule {
namespace {

/// "P1 0.42, P2 0.40": each animal's own growth, the spread behind the mean.
QString eachAnimal(const DietGroup& group) {
    QStringList parts;
    for (std::size_t k = 0; k < std::min(group.codes.size(), group.mmPerDay.size()); ++k)
        parts << QStringLiteral("%1 %2").arg(QString::fromStdString(group.codes[k]),
                                             QLocale().toString(group.mmPerDay[k], 'f', 3));
    return parts.join(QStringLiteral(",  "));
}

/// The mean with the half-width of its 95 % interval, from the spread between animals (Student's t).
QString meanText(const DietGroup& group) {
    const auto n = static_cast<double>(group.mmPerDay.size());
    const QString mean = QLocale().toString(group.meanMmPerDay, 'f', 3);
    if (group.mmPerDay.size() < 2) return QObject::tr("%1, one animal").arg(mean);
    double squares = 0.0;
    for (const double rate : group.mmPerDay) squares += (rate - group.meanMmPerDay) * (rate - group.meanMmPerDay);
    const double half = studentQuantile(0.975, n - 1.0) * std::sqrt(squares / (n - 1.0) / n);
    return QStringLiteral("%1 ± %2").arg(mean, QLocale().toString(half, 'f', 3));
}

}  // namespace

DietGroupModel::DietGroupModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {}

void DietGroupModel::show(std::vector<DietGroup> groups) {
    beginResetModel();
    groups_ = std::move(groups);
    endResetModel();
}

int DietGroupModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(groups_.size());
}

int DietGroupModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QVariant DietGroupModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const bool number = index.column() > Name && index.column() < Each;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    const DietGroup& group = groups_[static_cast<std::size_t>(index.row())];
    switch (index.column()) {
        case Name:
            return collection_.dietName(group.diet);
        case Animals:
            return static_cast<int>(group.codes.size());
        case Tanks:
            return group.tanks;
        case Mean:
            return meanText(group);
        default:
            return eachAnimal(group);
    }
}

QVariant DietGroupModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    const bool number = section > Name && section < Each;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Name:
            return tr("Diet");
        case Animals:
            return tr("Animals");
        case Tanks:
            return tr("Tanks");
        case Mean:
            return tr("Mean of animals, mm/day");
        default:
            return tr("Each animal, mm/day");
    }
}

}  // namespace ringrule
