// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/finding_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule {
namespace {

/// Whether the engine's words have another language here.
bool translated() {
    const std::string english = findingWords(FindingKind::Thin);
    return coreText(english) != QString::fromStdString(english);
}

QString against(const Finding& finding) {
    QStringList codes;
    for (const std::string& code : finding.comparedWith) codes << QString::fromStdString(code);
    return codes.isEmpty()
               ? QCoreApplication::translate("FindingWords", "its own past")
               : QCoreApplication::translate("FindingWords", "its tankmates %1").arg(codes.join(QStringLiteral(", ")));
}

QString patternOf(FindingKind kind) {
    switch (kind) {
        case FindingKind::Thin:
            return QCoreApplication::translate("FindingWords", "%1 is thin for its length: %2 against %3, since %4.");
        case FindingKind::GettingThinner:
            return QCoreApplication::translate("FindingWords",
                                               "%1 is getting thinner for its length: %2 against %3, since %4.");
        case FindingKind::BehindTankmates:
            return QCoreApplication::translate("FindingWords", "%1 lags behind: %2 against %3, since %4.");
        case FindingKind::Stalled:
            return QCoreApplication::translate("FindingWords",
                                               "%1 did not grow beyond measuring error: %2 against %3, since %4.");
        case FindingKind::MeasureDoubtful:
            return QCoreApplication::translate(
                "FindingWords", "%1 measures so differently (%2) that the measure of %4 is doubted and not judged.");
        case FindingKind::NotFeeding:
            return QCoreApplication::translate("FindingWords", "%1 refuses its food, since %4.");
        case FindingKind::TankLow:
            return QCoreApplication::translate("FindingWords", "The whole of %1 is below its own past: %2, since %4.");
        case FindingKind::CannotTell:
            break;
    }
    return QCoreApplication::translate("FindingWords", "Nothing can be told of %1 from the session of %4.");
}

QString afterWords(AfterChange verdict) {
    switch (verdict) {
        case AfterChange::Improved:
            return QCoreApplication::translate("FindingWords", "better");
        case AfterChange::Worse:
            return QCoreApplication::translate("FindingWords", "worse");
        case AfterChange::NoRealChange:
            return QCoreApplication::translate("FindingWords", "no better beyond error");
        case AfterChange::TooEarly:
            break;
    }
    return QCoreApplication::translate("FindingWords", "too early to tell");
}

QString beforeAndAfter(const BeforeAfter& measure, const std::string& unit) {
    return QCoreApplication::translate("FindingWords", "%1 (%2 before, %3 after)")
        .arg(afterWords(measure.verdict), numberText(measure.before, unit), numberText(measure.after, unit));
}

}  // namespace

QString dietChangeSentence(const DietChange& change) {
    if (!translated()) return withMinusSigns(QString::fromStdString(change.sentence));
    const QString caution =
        QCoreApplication::translate("FindingWords",
                                    "This does not prove the cause: an animal chosen because it was low tends to be "
                                    "less low next time.");
    return QString::fromStdString(Sentence{
        QCoreApplication::translate("FindingWords",
                                    "%1, food changed on %2: growth %3; condition against its "
                                    "tankmates %4. %5")
            .toStdString(),
        {change.animalCode, dayText(change.changedOn).toStdString(),
         beforeAndAfter(change.rateMmPerDay, "mm/d").toStdString(),
         beforeAndAfter(change.conditionPercent, "%").toStdString(),
         caution.toStdString()}}.text());
}

QString withMinusSigns(QString text) {
    static const QRegularExpression hyphen(QStringLiteral("(^|[ (])-(?=[0-9])"));
    return text.replace(hyphen, QStringLiteral("\\1\u2212"));
}

QString signedNumber(const Estimate& by, const std::string& unit) {
    const QString number = numberText(by, unit);
    return by.known() && by.value > 0.0 ? "+" + number : number;
}

QString findingSentence(const Finding& finding) {
    if (!translated()) return withMinusSigns(QString::fromStdString(finding.sentence));
    const QString by = finding.by.known() ? signedNumber(finding.by, finding.unit)
                                          : QCoreApplication::translate("FindingWords", "cannot tell");
    // Codes are put in last and together: one may hold a "%2" of its own.
    const Date day = finding.kind == FindingKind::CannotTell ? finding.on : finding.since.value_or(finding.on);
    return QString::fromStdString(Sentence{
        patternOf(finding.kind).toStdString(),
        {finding.animalCode, by.toStdString(), against(finding).toStdString(),
         dayText(day).toStdString()}}.text());
}

}  // namespace ringrule
