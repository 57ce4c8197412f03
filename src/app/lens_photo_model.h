// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ringrule/optics/lens_calibration.h"

namespace ringrule {

/// The photos of a lens calibration: what became of each, and what to retake.
class LensPhotoModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Name, State, Rms, Tilt, Corners, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    void show(std::vector<LensPhoto> photos);
    [[nodiscard]] const LensPhoto& photo(int row) const { return photos_[static_cast<std::size_t>(row)]; }
    /// Photos that are not good as they are.
    [[nodiscard]] int toRetake() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<LensPhoto> photos_;
};

}  // namespace ringrule
