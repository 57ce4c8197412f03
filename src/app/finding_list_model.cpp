// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/finding_list_model.h"
#include "app/core_text.h"

#include <QColor>

#include "app/two_line_delegate.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule {
namespace {

QString signOf(FindingKind kind) {
    switch (kind) {
        case FindingKind::MeasureDoubtful:
        case FindingKind::CannotTell:
            return QStringLiteral("?");
        default:
            return QStringLiteral("▼");
    }
}

QColor colourOf(FindingKind kind) {
    switch (kind) {
        case FindingKind::MeasureDoubtful:
            return {colour::kOrange};
        case FindingKind::CannotTell:
            return {0x8A969C};
        default:
            return {colour::kVermilion};
    }
}

}  // namespace

void FindingListModel::show(std::vector<Finding> findings) {
    beginResetModel();
    findings_ = std::move(findings);
    endResetModel();
}

int FindingListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(findings_.size());
}

QVariant FindingListModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Finding& finding = findings_[static_cast<std::size_t>(index.row())];
    const QString code = QString::fromStdString(finding.animalCode);
    switch (role) {
        case Qt::DisplayRole:
            return code.isEmpty() ? tr("Collection") : code;
        case SecondLineRole:
            return coreText(findingWords(finding.kind));
        case SignRole:
            return signOf(finding.kind);
        case SignColourRole:
            return colourOf(finding.kind);
        case Qt::ToolTipRole:
        case Qt::AccessibleTextRole:
            return QString::fromStdString(finding.sentence);
        default:
            return {};
    }
}

}  // namespace ringrule
