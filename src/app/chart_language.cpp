// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/chart_language.h"

#include <QStringList>

#include "app/core_text.h"

namespace ringrule {
namespace {

std::string own(const std::string& english) {
    return english.empty() ? english : coreText(english).toStdString();
}

/// A note is sentences one after the other, each known by itself.
std::string ownSentences(const std::string& note) {
    QStringList told;
    QString sentence;
    for (const QString& part : QString::fromStdString(note).split(QStringLiteral(". "))) {
        const QString whole = part.endsWith('.') ? part : part + '.';
        if (part.isEmpty()) continue;
        told << coreText(whole.toStdString());
    }
    return told.join(' ').toStdString();
}

/// "Jan 2031", "Jan" or "12 Jan": the month is a word, the rest figures.
std::string ownTick(const std::string& label) {
    QStringList parts = QString::fromStdString(label).split(' ');
    for (QString& part : parts)
        if (!part.isEmpty() && part.at(0).isLetter()) part = coreText(part.toStdString());
    return parts.join(' ').toStdString();
}

}  // namespace

void inOwnLanguage(Chart& chart) {
    chart.title = own(chart.title);
    chart.x.title = own(chart.x.title);
    chart.y.title = own(chart.y.title);
    chart.emptySentence = own(chart.emptySentence);
    if (!chart.note.empty()) chart.note = ownSentences(chart.note);
    for (ChartTick& tick : chart.y.ticks) tick.label = ownFigure(QString::fromStdString(tick.label)).toStdString();
    if (chart.x.dates)
        for (ChartTick& tick : chart.x.ticks) tick.label = ownTick(tick.label);
}

}  // namespace ringrule
