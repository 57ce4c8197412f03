// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_choice_model.h"

#include <algorithm>

namespace ringrule {

void AnimalChoiceModel::show(std::vector<Animal> animals) {
    beginResetModel();
    rows_.clear();
    for (Animal& animal : animals) rows_.push_back({std::move(animal), true});
    endResetModel();
}

int AnimalChoiceModel::rowOf(AnimalId animal) const {
    const auto found =
        std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.animal.id == animal; });
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

int AnimalChoiceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant AnimalChoiceModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return QString::fromStdString(row.animal.code);
        case Qt::ToolTipRole:
            return QString::fromStdString(row.animal.species);
        case Qt::CheckStateRole:
            return row.ticked ? Qt::Checked : Qt::Unchecked;
        default:
            return {};
    }
}

bool AnimalChoiceModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::CheckStateRole || !checkIndex(index, CheckIndexOption::IndexIsValid)) return false;
    rows_[static_cast<std::size_t>(index.row())].ticked = value.toInt() == Qt::Checked;
    emit dataChanged(index, index, {Qt::CheckStateRole});
    return true;
}

Qt::ItemFlags AnimalChoiceModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable;
}

}  // namespace ringrule
