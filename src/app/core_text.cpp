// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/core_text.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>

#include "ringrule/sheets/number_text.h"

namespace ringrule {

QString coreText(std::string_view english) {
    const QByteArray text(english.data(), static_cast<qsizetype>(english.size()));
    return QCoreApplication::translate("core", text.constData());
}

QString coreText(const Sentence& sentence) {
    // The translated pattern is filled as the engine fills its own: a value may hold a "%1" of its own.
    std::vector<std::string> values;
    for (const std::string& value : sentence.values)
        values.push_back(ownFigure(QString::fromStdString(value)).toStdString());
    return QString::fromStdString(Sentence{coreText(sentence.pattern).toStdString(), values}.text());
}

QString ownFigure(QString figure) {
    static const QRegularExpression number(QStringLiteral("(?<![0-9.])([0-9]+)[.]([0-9]+)(?![0-9.])"));
    const QString sign = QLocale().decimalPoint();
    return sign == QLatin1String(".") ? figure : figure.replace(number, QStringLiteral("\\1") + sign + "\\2");
}

QString numberText(const Estimate& estimate, std::string_view unit) {
    const std::string text = numberWithInterval(estimate, unit);
    return estimate.known() ? ownFigure(QString::fromStdString(text)) : coreText(text);
}

QString reasonText(std::string_view reason, const std::string& sentence) {
    const QString english = QString::fromStdString(sentence);
    if (const QString own = coreText(sentence); own != english) return own;
    const QString byReason = coreText(reason);
    return byReason == QString::fromUtf8(reason.data(), static_cast<qsizetype>(reason.size())) ? english : byReason;
}

QString coreText(const std::vector<Sentence>& sentences) {
    QStringList told;
    for (const Sentence& sentence : sentences) told << coreText(sentence);
    return told.join(QLatin1Char(' '));
}

}  // namespace ringrule
