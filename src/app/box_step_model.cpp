// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/box_step_model.h"
#include "app/core_text.h"

#include <QCoreApplication>
#include <algorithm>

#include "app/two_line_delegate.h"
#include "ringrule/sheets/colours.h"

namespace ringrule {

QString setupStateWords(SetupState state) {
    switch (state) {
        case SetupState::CannotTell:
            return QCoreApplication::translate("BoxSetup", "Cannot tell yet");
        case SetupState::ToDo:
            return QCoreApplication::translate("BoxSetup", "To do");
        case SetupState::Wrong:
            return QCoreApplication::translate("BoxSetup", "Wrong");
        case SetupState::Done:
            return QCoreApplication::translate("BoxSetup", "Done");
    }
    return {};
}

QString setupStateSign(SetupState state) {
    switch (state) {
        case SetupState::CannotTell:
            return QStringLiteral("?");
        case SetupState::ToDo:
            return QStringLiteral("○");
        case SetupState::Wrong:
            return QStringLiteral("▼");
        case SetupState::Done:
            return QStringLiteral("✓");
    }
    return {};
}

QColor setupStateColour(SetupState state) {
    switch (state) {
        case SetupState::CannotTell:
            return {0x8A969C};
        case SetupState::ToDo:
            return {colour::kBlue};
        case SetupState::Wrong:
            return {colour::kVermilion};
        case SetupState::Done:
            return {colour::kGreen};
    }
    return {};
}

void BoxStepModel::show(std::vector<SetupStep> steps) {
    // A change of state keeps the row that is looked at; another number of steps is another list.
    if (steps.size() == steps_.size()) {
        steps_ = std::move(steps);
        if (!steps_.empty()) emit dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    steps_ = std::move(steps);
    endResetModel();
}

int BoxStepModel::rowOf(SetupStepKind kind) const {
    const auto found =
        std::find_if(steps_.begin(), steps_.end(), [kind](const SetupStep& step) { return step.kind == kind; });
    return found == steps_.end() ? -1 : static_cast<int>(found - steps_.begin());
}

int BoxStepModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(steps_.size());
}

QVariant BoxStepModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const SetupStep& step = steps_[static_cast<std::size_t>(index.row())];
    const QString title = tr("%1  %2").arg(index.row() + 1).arg(coreText(step.title));
    switch (role) {
        case Qt::DisplayRole:
            return title;
        case SecondLineRole:
            return setupStateWords(step.state);
        case SignRole:
            return setupStateSign(step.state);
        case SignColourRole:
            return setupStateColour(step.state);
        case Qt::ToolTipRole:
            return coreText(step.advice.empty() ? step.found : step.advice);
        case Qt::AccessibleTextRole:
            return title + ", " + setupStateWords(step.state);
        default:
            return {};
    }
}

}  // namespace ringrule
