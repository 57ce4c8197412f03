// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/finding_list_model.h"

#include <QColor>

#include "app/decision_panel.h"
#include "app/finding_words.h"
#include "app/two_line_delegate.h"
#include "ringrule/sheets/colours.h"
#include "ringrule/workflow/decision_outcome.h"

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

void FindingListModel::show(std::vector<Finding> findings, std::vector<Decision> decisions) {
    beginResetModel();
    findings_ = std::move(findings);
    decisions_ = std::move(decisions);
    endResetModel();
}

QString FindingListModel::secondLine(const Finding& finding) const {
    const QString kind = findingLine(finding);
    const Decision* decided = decisionOn(finding, decisions_);
    return decided == nullptr ? kind : kind + QStringLiteral("  ·  ") + decisionWords(decided->decision);
}

int FindingListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(findings_.size());
}

QVariant FindingListModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Finding& finding = findings_[static_cast<std::size_t>(index.row())];
    const QString code = findingSubject(finding);
    switch (role) {
        case Qt::DisplayRole:
            return code.isEmpty() ? tr("Collection") : code;
        case SecondLineRole:
            return secondLine(finding);
        case SignRole:
            return decisionOn(finding, decisions_) != nullptr ? QStringLiteral("✓") : signOf(finding.kind);
        case SignColourRole:
            return colourOf(finding.kind);
        case Qt::ToolTipRole:
            return findingSentence(finding);
        case Qt::AccessibleTextRole:
            return (code.isEmpty() ? tr("Collection") : code) + QStringLiteral(": ") + secondLine(finding);
        default:
            return {};
    }
}

}  // namespace ringrule
