// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diet_change_model.h"

#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/sheets/number_text.h"

namespace ringrule {
namespace {

QString number(const Estimate& estimate) {
    return estimate.known() ? numberText(estimate) : QStringLiteral("–");
}

QString verdictWords(AfterChange verdict) {
    switch (verdict) {
        case AfterChange::TooEarly:
            return QObject::tr("too early to tell");
        case AfterChange::Improved:
            return QObject::tr("▲ better");
        case AfterChange::NoRealChange:
            return QObject::tr("no real change");
        case AfterChange::Worse:
            return QObject::tr("▼ worse");
    }
    return {};
}

bool isNumber(int column) {
    return column == DietChangeModel::RateBefore || column == DietChangeModel::RateAfter ||
           column == DietChangeModel::ConditionBefore || column == DietChangeModel::ConditionAfter;
}

}  // namespace

DietChangeModel::DietChangeModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {}

void DietChangeModel::show(std::vector<DietChange> changes) {
    beginResetModel();
    changes_ = std::move(changes);
    endResetModel();
}

int DietChangeModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(changes_.size());
}

int DietChangeModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QString DietChangeModel::text(const DietChange& change, int column) const {
    switch (column) {
        case Code:
            return QString::fromStdString(change.animalCode);
        case ChangedOn:
            return dayText(change.changedOn);
        case From:
            return collection_.dietCode(change.from);
        case To:
            return collection_.dietCode(change.to);
        case RateBefore:
            return number(change.rateMmPerDay.before);
        case RateAfter:
            return number(change.rateMmPerDay.after);
        case RateVerdict:
            return verdictWords(change.rateMmPerDay.verdict);
        case ConditionBefore:
            return number(change.conditionPercent.before);
        case ConditionAfter:
            return number(change.conditionPercent.after);
        default:
            return verdictWords(change.conditionPercent.verdict);
    }
}

QVariant DietChangeModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (isNumber(index.column()) ? Qt::AlignRight : Qt::AlignLeft));
    const DietChange& change = changes_[static_cast<std::size_t>(index.row())];
    if (role == Qt::ToolTipRole && index.column() == From) return collection_.dietName(change.from);
    if (role == Qt::ToolTipRole && index.column() == To) return collection_.dietName(change.to);
    if (role != Qt::DisplayRole) return {};
    return text(change, index.column());
}

QVariant DietChangeModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (isNumber(section) ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Code:
            return tr("Animal");
        case ChangedOn:
            return tr("Changed on");
        case From:
            return tr("From");
        case To:
            return tr("To");
        case RateBefore:
            return tr("mm/day before");
        case RateAfter:
            return tr("after");
        case RateVerdict:
            return tr("Growth");
        case ConditionBefore:
            return tr("Depth, % before");
        case ConditionAfter:
            return tr("after");
        default:
            return tr("Condition");
    }
}

}  // namespace ringrule
