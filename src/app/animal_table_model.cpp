// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_table_model.h"

#include <QLocale>
#include "app/core_text.h"
#include "app/day_text.h"

#include <algorithm>

#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule {
namespace {

bool isNumber(int column) {
    return column == AnimalTableModel::Card || column == AnimalTableModel::Length ||
           column == AnimalTableModel::Condition;
}

/// The newest known value of a measure.
Estimate newest(const std::vector<Observation>& observations, Estimate Observation::*measure) {
    const auto last = std::find_if(observations.rbegin(), observations.rend(),
                                   [measure](const Observation& seen) { return (seen.*measure).known(); });
    return last == observations.rend() ? Estimate{} : (*last).*measure;
}

/// What a finding says of its animal; with its day when the animal was seen again since.
QString lookWords(const Finding& finding, const std::optional<Date>& lastSeen) {
    const QString words = coreText(findingWords(finding.kind));
    return lastSeen && finding.on < *lastSeen ? AnimalTableModel::tr("%1 on %2").arg(words, dayText(finding.on))
                                              : words;
}

/// The change of length from first to last session in words.
QString growthWords(const QPolygonF& lengths) {
    if (lengths.size() < 2) return AnimalTableModel::tr("one session");
    return AnimalTableModel::tr("from %1 to %2 mm in %n sessions", nullptr, static_cast<int>(lengths.size()))
        .arg(QLocale().toString(lengths.front().y(), 'f', 0))
        .arg(QLocale().toString(lengths.back().y(), 'f', 0));
}

}  // namespace

AnimalTableModel::AnimalTableModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {
    connect(&collection, &Collection::opened, this, &AnimalTableModel::rebuild);
    connect(&collection, &Collection::reloaded, this, &AnimalTableModel::rebuild);
    connect(&collection, &Collection::reviewChanged, this, &AnimalTableModel::rebuild);
    if (collection.isOpen()) rebuild();
}

void AnimalTableModel::rebuild() {
    beginResetModel();
    rows_.clear();
    for (const Animal& animal : collection_.animals()) {
        Row row;
        row.animal = animal;
        const auto& histories = collection_.review().histories;
        const auto history = std::find_if(histories.begin(), histories.end(),
                                          [&](const AnimalHistory& h) { return h.animal.id == animal.id; });
        if (history != histories.end()) {
            row.lengthMm = newest(history->observations, &Observation::standardLengthMm);
            for (const Observation& seen : history->observations)
                if (seen.standardLengthMm.known())
                    row.lengths << QPointF(static_cast<double>(seen.on.time_since_epoch().count()),
                                           seen.standardLengthMm.value);
            const auto place = static_cast<std::size_t>(history - histories.begin());
            if (place < collection_.review().conditions.size()) row.condition = collection_.review().conditions[place];
            if (!history->observations.empty()) row.lastSeen = history->observations.back().on;
            for (const Stay& stay : history->stays)
                if (const Tank* tank = collection_.tank(stay.tank); tank != nullptr && !stay.to)
                    row.tank = QString::fromStdString(tank->code);
        }
        QStringList reasons;
        for (const Finding& finding : collection_.review().findings)
            if (finding.animal == animal.id && isFlag(finding)) reasons << lookWords(finding, row.lastSeen);
        reasons.removeDuplicates();
        row.look = reasons.join(QStringLiteral(", "));
        rows_.push_back(std::move(row));
    }
    endResetModel();
}

int AnimalTableModel::rowOf(AnimalId animal) const {
    const auto found =
        std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.animal.id == animal; });
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

int AnimalTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int AnimalTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QString AnimalTableModel::text(const Row& row, int column) const {
    const auto number = [](const Estimate& estimate) {
        return estimate.known() ? numberText(estimate) : QStringLiteral("–");
    };
    switch (column) {
        case Code:
            return QString::fromStdString(row.animal.code);
        case Species:
            return QString::fromStdString(row.animal.species);
        case TankColumn:
            return row.tank.isEmpty() ? QStringLiteral("–") : row.tank;
        case Card:
            return row.animal.card ? QString::number(*row.animal.card) : QStringLiteral("–");
        case Length:
            return number(row.lengthMm);
        case Condition:
            return number(row.condition);
        case LastSeen:
            return row.lastSeen ? dayText(*row.lastSeen) : tr("not yet");
        case Look:
            return row.look.isEmpty() ? QString() : QStringLiteral("▼ ") + row.look;
        default:
            return {};
    }
}

QVariant AnimalTableModel::sortKey(const Row& row, int column) const {
    switch (column) {
        case Card:
            return row.animal.card ? *row.animal.card : -1;
        case Length:
            return row.lengthMm.known() ? row.lengthMm.value : -1.0;
        case Condition:
            return row.condition.known() ? row.condition.value : -1.0;
        case Growth:
            return row.lengths.size() < 2 ? -1.0 : row.lengths.back().y() / row.lengths.front().y();
        case LastSeen:
            return row.lastSeen ? QString::fromStdString(formatDate(*row.lastSeen)) : QString();
        default:
            return text(row, column);
    }
}

QVariant AnimalTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    const bool number = isNumber(index.column());
    if (role == kAnimalRole) return QVariant::fromValue<qlonglong>(row.animal.id.value);
    if (role == kLookRole) return !row.look.isEmpty();
    if (index.column() == Growth && role == kLineRole) return QVariant::fromValue(row.lengths);
    if (index.column() == Growth && (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole))
        return growthWords(row.lengths);
    if (role == Qt::DisplayRole) return text(row, index.column());
    if (role == kSortRole) return sortKey(row, index.column());
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    return {};
}

QVariant AnimalTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (isNumber(section) ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::ToolTipRole && section == Length) return tr("Standard length");
    if (role == Qt::ToolTipRole && section == Condition)
        return tr("Trunk depth against what its tankmates' let expect at its length: 100 is alike");
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Code:
            return tr("Animal");
        case Species:
            return tr("Species");
        case TankColumn:
            return tr("Tank");
        case Card:
            return tr("Card");
        case Length:
            return tr("Length, mm");
        case Condition:
            return tr("Condition");
        case Growth:
            return tr("Growth");
        case LastSeen:
            return tr("Last seen");
        case Look:
            return tr("Needs a look");
        default:
            return {};
    }
}

}  // namespace ringrule
