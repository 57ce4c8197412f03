// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/brood_table_model.h"

#include <QCoreApplication>

#include "app/day_text.h"

namespace ringrule {
namespace {

bool isNumber(int column) {
    return column >= BroodTableModel::Young && column <= BroodTableModel::Length;
}

}  // namespace

QString broodEventWords(const std::string& event) {
    if (event == "courting") return QCoreApplication::translate("BroodEvent", "courting");
    if (event == "egg-transfer") return QCoreApplication::translate("BroodEvent", "egg transfer");
    if (event == "carrying") return QCoreApplication::translate("BroodEvent", "seen carrying");
    if (event == "birth") return QCoreApplication::translate("BroodEvent", "birth");
    if (event == "count") return QCoreApplication::translate("BroodEvent", "counted");
    return QString::fromStdString(event);
}

BroodTableModel::BroodTableModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {}

void BroodTableModel::show(std::vector<BroodGroup> broods, std::optional<Date> asOf) {
    beginResetModel();
    broods_ = std::move(broods);
    asOf_ = asOf;
    endResetModel();
}

int BroodTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(broods_.size());
}

int BroodTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QString BroodTableModel::text(const BroodGroup& brood, int column) const {
    const auto parent = [this](const std::optional<AnimalId>& id) {
        return id ? collection_.animalCode(id) : QStringLiteral("–");
    };
    switch (column) {
        case Code:
            return QString::fromStdString(brood.code);
        case Species:
            return QString::fromStdString(brood.species);
        case Father:
            return parent(brood.father);
        case Mother:
            return parent(brood.mother);
        case Born:
            if (!brood.bornOn) return QStringLiteral("–");
            return asOf_ && *asOf_ >= *brood.bornOn
                       ? tr("%1, %2 days ago").arg(dayText(*brood.bornOn)).arg((*asOf_ - *brood.bornOn).count())
                       : dayText(*brood.bornOn);
        case Young:
            return brood.young ? QString::number(*brood.young) : QStringLiteral("–");
        case Animals:
            return QString::number(brood.animals.size());
        case Length:
            if (brood.measured == 0) return QStringLiteral("–");
            return brood.measured == 1
                       ? tr("%1, one animal").arg(qRound(brood.meanLengthMm))
                       : tr("%1, most within %2").arg(qRound(brood.meanLengthMm)).arg(qRound(brood.lengthSpreadMm));
        default:
            return brood.due ? tr("%1 to %2").arg(dayText(brood.due->from), dayText(brood.due->until)) : QString();
    }
}

QVariant BroodTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const BroodGroup& brood = broods_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return text(brood, index.column());
    if (role == Qt::ToolTipRole && index.column() == Due && brood.due)
        return tr("By %1").arg(QString::fromStdString(brood.due->source));
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (isNumber(index.column()) ? Qt::AlignRight : Qt::AlignLeft));
    return {};
}

QVariant BroodTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (isNumber(section) ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::ToolTipRole && section == Length)
        return tr("Mean standard length of those measured last, and 1.96 standard deviations between them");
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Code:
            return tr("Brood");
        case Species:
            return tr("Species");
        case Father:
            return tr("Father");
        case Mother:
            return tr("Mother");
        case Born:
            return tr("Born");
        case Young:
            return tr("Young");
        case Animals:
            return tr("Animals");
        case Length:
            return tr("Mean length, mm");
        default:
            return tr("Birth due");
    }
}

}  // namespace ringrule
