// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_list_model.h"

#include <algorithm>

#include "app/core_text.h"
#include "app/two_line_delegate.h"

namespace ringrule {

PhotoListModel::PhotoListModel(Collection& collection, QObject* parent)
    : QAbstractListModel(parent), collection_(collection) {
    connect(&collection_, &Collection::photoChanged, this, &PhotoListModel::refresh);
}

PhotoListModel::Row PhotoListModel::read(const StoredPhoto& photo) const {
    Row row{photo, collection_.store().measuresOfPhoto(photo.id), PhotoState::NotMeasured};
    std::sort(row.measures.begin(), row.measures.end(),
              [](const StoredMeasure& a, const StoredMeasure& b) { return a.animalIndex < b.animalIndex; });
    row.state = stateOf(row.measures);
    return row;
}

void PhotoListModel::showSession(std::optional<SessionId> session) {
    beginResetModel();
    rows_.clear();
    if (session)
        for (const StoredPhoto& photo : collection_.store().photos(*session)) rows_.push_back(read(photo));
    endResetModel();
}

int PhotoListModel::rowOf(PhotoId photo) const {
    const auto found = std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.photo.id == photo; });
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

int PhotoListModel::countOf(PhotoState state) const {
    return static_cast<int>(
        std::count_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.state == state; }));
}

int PhotoListModel::firstOf(PhotoState state) const {
    const auto found = std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.state == state; });
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

void PhotoListModel::refresh(PhotoId photo) {
    const int at = rowOf(photo);
    if (at < 0) return;
    rows_[static_cast<std::size_t>(at)] = read(row(at).photo);
    emit dataChanged(index(at), index(at));
}

int PhotoListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QString PhotoListModel::titleOf(const Row& row) const {
    const QString viewText = coreText(viewName(row.photo.view));
    if (row.measures.size() > 1)
        return tr("%n animals, %1", nullptr, static_cast<int>(row.measures.size())).arg(viewText);
    const QString code = row.measures.empty() ? tr("no animal") : collection_.animalCode(row.measures.front().animal);
    // Repeats of one animal are told apart by number.
    const auto alike = [&](const Row& other) {
        return other.measures.size() == 1 && row.measures.size() == 1 && other.photo.view == row.photo.view &&
               other.measures.front().animal && other.measures.front().animal == row.measures.front().animal;
    };
    const auto before = std::count_if(rows_.data(), &row, alike);
    const QString title = tr("%1, %2").arg(code, viewText);
    return before == 0 ? title : tr("%1 (%2)").arg(title).arg(before + 1);
}

QVariant PhotoListModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return titleOf(row);
        case SecondLineRole:
            return stateWords(row.state);
        case SignRole:
            return stateSign(row.state);
        case SignColourRole:
            return stateColour(row.state);
        case Qt::ToolTipRole:
            return QString::fromStdString(row.photo.originalName);
        case Qt::AccessibleTextRole:
            return titleOf(row) + ", " + stateWords(row.state);
        default:
            return {};
    }
}

}  // namespace ringrule
