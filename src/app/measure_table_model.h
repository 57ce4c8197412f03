// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ringrule/sheets/number_text.h"

namespace ringrule {

/// The measures of one animal: name, and number with its 95 % interval.
class MeasureTableModel : public QAbstractTableModel {
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;

    void clear() { setRows({}); }
    void show(const Measurement& measurement) { setRows(measureRows(measurement)); }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    void setRows(std::vector<MeasureRow> rows);
    std::vector<MeasureRow> rows_;
};

}  // namespace ringrule
