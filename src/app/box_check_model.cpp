// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/box_check_model.h"

#include <QLocale>
#include <algorithm>

#include "app/core_text.h"

namespace ringrule {
namespace {

QString verdictText(const PastBoxCheck& check) {
    if (!check.refusalReason.empty()) return BoxCheckModel::tr("?  cannot tell");
    if (!check.passed) return BoxCheckModel::tr("▼  does not hold");
    return check.rod ? BoxCheckModel::tr("✓  measures true") : BoxCheckModel::tr("✓  plate as in the file");
}

QString rodText(const PastBoxCheck& check) {
    if (!check.rod) return BoxCheckModel::tr("plate alone");
    return BoxCheckModel::tr("%1 ± %2 of %3 mm")
        .arg(QLocale().toString(check.rod->readMm, 'f', 2))
        .arg(QLocale().toString(check.rod->u95Mm, 'f', 2))
        .arg(QLocale().toString(check.rod->statedMm, 'f', 2));
}

QString foundText(const PastBoxCheck& check) {
    QStringList sentences;
    for (const BoxFinding& finding : check.findings)
        sentences << reasonText(boxFaultId(finding.fault), finding.sentence);
    if (!check.refusalSentence.empty()) sentences << reasonText(check.refusalReason, check.refusalSentence);
    return sentences.join(QLatin1Char(' '));
}

}  // namespace

void BoxCheckModel::show(std::vector<PastBoxCheck> checks) {
    beginResetModel();
    checks_ = std::move(checks);
    std::reverse(checks_.begin(), checks_.end());
    endResetModel();
}

int BoxCheckModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(checks_.size());
}

int BoxCheckModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QVariant BoxCheckModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const PastBoxCheck& check = checks_[static_cast<std::size_t>(index.row())];
    if (role == Qt::ToolTipRole) return foundText(check);
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case Day:
            return QString::fromStdString(check.checkedOn.substr(0, 10));
        case Verdict:
            return verdictText(check);
        case Rod:
            return rodText(check);
        default:
            return foundText(check);
    }
}

QVariant BoxCheckModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section < 0 || section >= ColumnCount) return {};
    switch (section) {
        case Day:
            return tr("Day");
        case Verdict:
            return tr("Verdict");
        case Rod:
            return tr("Rod read");
        default:
            return tr("What was off");
    }
}

}  // namespace ringrule
