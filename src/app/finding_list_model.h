// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <vector>

#include "ringrule/judge/finding.h"

namespace ringrule {

/// Findings as a two-line list, most urgent first.
class FindingListModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    void show(std::vector<Finding> findings);
    [[nodiscard]] const Finding& finding(int row) const { return findings_[static_cast<std::size_t>(row)]; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<Finding> findings_;
};

}  // namespace ringrule
