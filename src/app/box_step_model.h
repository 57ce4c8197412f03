// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <QColor>
#include <vector>

#include "ringrule/optics/box_setup.h"

namespace ringrule {

[[nodiscard]] QString setupStateWords(SetupState state);
[[nodiscard]] QString setupStateSign(SetupState state);
[[nodiscard]] QColor setupStateColour(SetupState state);

/// The steps of setting a box up, in order, as a two-line list.
class BoxStepModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::vector<SetupStep> steps);
    [[nodiscard]] const SetupStep& step(int row) const { return steps_[static_cast<std::size_t>(row)]; }
    [[nodiscard]] int rowOf(SetupStepKind kind) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<SetupStep> steps_;
};

}  // namespace ringrule
