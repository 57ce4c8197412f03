// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/core_text.h"

#include <QCoreApplication>

namespace ringrule {

QString coreText(std::string_view english) {
    const QByteArray text(english.data(), static_cast<qsizetype>(english.size()));
    return QCoreApplication::translate("core", text.constData());
}

QString coreText(const Sentence& sentence) {
    // The translated pattern is filled as the engine fills its own: a value may hold a "%1" of its own.
    return QString::fromStdString(Sentence{coreText(sentence.pattern).toStdString(), sentence.values}.text());
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
