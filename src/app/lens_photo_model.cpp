// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/lens_photo_model.h"

#include <QLocale>
#include <algorithm>

namespace ringrule {
namespace {

QString stateText(LensPhotoState state) {
    switch (state) {
        case LensPhotoState::Used:
            return LensPhotoModel::tr("✓  used");
        case LensPhotoState::TooSimilar:
            return LensPhotoModel::tr("○  used, repeats another");
        case LensPhotoState::Blurred:
            return LensPhotoModel::tr("○  used, blurred");
        case LensPhotoState::Outlier:
            return LensPhotoModel::tr("▼  left out: does not fit");
        case LensPhotoState::BoardNotFound:
            return LensPhotoModel::tr("▼  left out: no board");
        case LensPhotoState::OtherSize:
            return LensPhotoModel::tr("▼  left out: other size");
        case LensPhotoState::OtherCamera:
            return LensPhotoModel::tr("▼  left out: other camera");
    }
    return {};
}

}  // namespace

void LensPhotoModel::show(std::vector<LensPhoto> photos) {
    beginResetModel();
    photos_ = std::move(photos);
    endResetModel();
}

int LensPhotoModel::toRetake() const {
    return static_cast<int>(std::count_if(photos_.begin(), photos_.end(),
                                          [](const LensPhoto& p) { return p.state != LensPhotoState::Used; }));
}

int LensPhotoModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(photos_.size());
}

int LensPhotoModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QVariant LensPhotoModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const LensPhoto& photo = photos_[static_cast<std::size_t>(index.row())];
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (index.column() >= Rms ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::ToolTipRole) return QString::fromStdString(photo.advice);
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case Name:
            return QString::fromStdString(photo.path.filename().string());
        case State:
            return stateText(photo.state);
        case Rms:
            return photo.rmsPx > 0.0 ? QLocale().toString(photo.rmsPx, 'f', 2) : QStringLiteral("–");
        case Tilt:
            return photo.points > 0 && photo.rmsPx > 0.0 ? tr("%1°").arg(QLocale().toString(photo.tiltDegrees, 'f', 0))
                                                         : QStringLiteral("–");
        default:
            return photo.points;
    }
}

QVariant LensPhotoModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (section >= Rms ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::ToolTipRole && section == Rms)
        return tr("How far the corners lie from where the fit puts them, root mean square");
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Name:
            return tr("Photo");
        case State:
            return tr("What became of it");
        case Rms:
            return tr("RMS, px");
        case Tilt:
            return tr("Tilt");
        default:
            return tr("Corners");
    }
}

}  // namespace ringrule
