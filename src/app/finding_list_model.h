// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <vector>

#include "ringrule/husbandry/care.h"
#include "ringrule/judge/finding.h"

namespace ringrule {

/// Findings as a two-line list, most urgent first.
class FindingListModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    /// `decisions` of the collection: a finding that was decided on says how.
    void show(std::vector<Finding> findings, std::vector<Decision> decisions = {});
    [[nodiscard]] const Finding& finding(int row) const { return findings_[static_cast<std::size_t>(row)]; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    [[nodiscard]] QString secondLine(const Finding& finding) const;

    std::vector<Finding> findings_;
    std::vector<Decision> decisions_;
};

}  // namespace ringrule
