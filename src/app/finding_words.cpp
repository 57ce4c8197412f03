// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/finding_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "app/core_text.h"
#include "app/day_text.h"
#include "ringrule/husbandry/date.h"
#include "ringrule/judge/tank_growth.h"
#include "ringrule/sheets/number_text.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule {
namespace {

/// Whether the engine's words have another language here.
bool translated() {
    const std::string english = findingWords(FindingKind::Thin);
    return coreText(english) != QString::fromStdString(english);
}

QString codesOf(const Finding& finding) {
    QStringList codes;
    for (const std::string& code : finding.comparedWith) codes << QString::fromStdString(code);
    return codes.join(QStringLiteral(", "));
}

QString against(const Finding& finding) {
    return finding.comparedWith.empty()
               ? QCoreApplication::translate("FindingWords", "its own past")
               : QCoreApplication::translate("FindingWords", "its tankmates %1").arg(codesOf(finding));
}

/// Whether it is a tank that grows slower than is published, not one that is below its own past.
bool belowPublished(const Finding& finding) {
    return finding.kind == FindingKind::TankLow && finding.measure == kTankGrowthMeasure;
}

/// Whether a doubted measure is likely another animal's.
bool likelyWrongCard(const Finding& finding) {
    return finding.kind == FindingKind::MeasureDoubtful && !finding.comparedWith.empty();
}

QString patternOf(const Finding& finding) {
    if (belowPublished(finding))
        return QCoreApplication::translate("FindingWords",
                                           "The whole of %1 grows slower than is published: %2, since %4.");
    if (likelyWrongCard(finding))
        return QCoreApplication::translate(
            "FindingWords",
            "%1 measures so differently (%2) that the measure of %4 is doubted and not judged. Likely a wrong card: it "
            "fits %5.");
    switch (finding.kind) {
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
    return QString::fromStdString(
        Sentence{patternOf(finding).toStdString(),
                 {findingSubject(finding).toStdString(), by.toStdString(), against(finding).toStdString(),
                  dayText(day).toStdString(), codesOf(finding).toStdString()}}
            .text());
}

QString findingTitle(const Finding& finding) {
    if (likelyWrongCard(finding))
        return QCoreApplication::translate("FindingWords", "measure doubtful, likely a wrong card (%1?)")
            .arg(codesOf(finding));
    return coreText(findingWords(finding.kind));
}

QString findingLine(const Finding& finding) {
    if (likelyWrongCard(finding))
        return QCoreApplication::translate("FindingWords", "likely a wrong card (%1?)").arg(codesOf(finding));
    return findingTitle(finding);
}

QString findingSubject(const Finding& finding) {
    const QString code = QString::fromStdString(finding.animalCode);
    const QString tank = QStringLiteral("tank ");  // as the engine writes it
    return finding.tank && code.startsWith(tank)
               ? QCoreApplication::translate("FindingWords", "tank %1").arg(code.mid(tank.size()))
               : code;
}

QString findingComparedWith(const Finding& finding) {
    if (belowPublished(finding))
        return QCoreApplication::translate("FindingWords", "published growth", "compared with");
    return finding.comparedWith.empty() ? QCoreApplication::translate("FindingWords", "its own past", "compared with")
                                        : codesOf(finding);
}

}  // namespace ringrule
