// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "ringrule/husbandry/date.h"
#include "ringrule/sheets/number_text.h"

namespace ringrule {

/// The measures of one animal: name with unit, number with its 95 % interval, and the same of the last time.
class MeasureTableModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Name, Now, Before, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;

    void clear() { setRows({}); }
    void show(const Measurement& measurement) { setRows(measureRows(measurement)); }
    /// What the last time gave, and when; absent: nothing to show beside. Stays for what is shown from then on.
    void showBefore(std::optional<Measurement> before, std::optional<Date> on);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    void setRows(std::vector<MeasureRow> rows);
    [[nodiscard]] QString beforeOf(const std::string& name) const;

    std::vector<MeasureRow> rows_;
    std::vector<MeasureRow> before_;
    std::optional<Date> beforeOn_;
};

}  // namespace ringrule
