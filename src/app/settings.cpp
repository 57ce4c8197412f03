// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/settings.h"

#include <QSettings>
#include <algorithm>

namespace ringrule {
namespace {

constexpr const char* kColours = "view/colours";
constexpr const char* kTextPercent = "view/text-percent";
constexpr const char* kLanguage = "view/language";
constexpr const char* kDays = "view/days";
constexpr const char* kRecent = "collections/recent";
constexpr const char* kKeeper = "session/keeper";
constexpr const char* kGeometry = "window/geometry";
constexpr int kMostRecent = 8;

const QStringList& colourNames() {
    static const QStringList names{QStringLiteral("system"), QStringLiteral("light"), QStringLiteral("dark")};
    return names;
}

const QStringList& dayFormatNames() {
    static const QStringList names{QStringLiteral("year-first"), QStringLiteral("day-first"),
                                   QStringLiteral("month-first")};
    return names;
}

}  // namespace

Settings readSettings(const QSettings& from) {
    Settings settings;
    settings.colours =
        static_cast<Colours>(std::max<qsizetype>(0, colourNames().indexOf(from.value(kColours).toString())));
    const int percent = from.value(kTextPercent, settings.textPercent).toInt();
    if (std::find(kTextPercents.begin(), kTextPercents.end(), percent) != kTextPercents.end())
        settings.textPercent = percent;
    settings.days =
        static_cast<DayFormat>(std::max<qsizetype>(0, dayFormatNames().indexOf(from.value(kDays).toString())));
    settings.language = from.value(kLanguage).toString();
    settings.recentCollections = from.value(kRecent).toStringList();
    settings.keeper = from.value(kKeeper).toString();
    settings.windowGeometry = from.value(kGeometry).toByteArray();
    return settings;
}

void writeSettings(QSettings& to, const Settings& settings) {
    to.setValue(kColours, colourNames()[static_cast<int>(settings.colours)]);
    to.setValue(kTextPercent, settings.textPercent);
    to.setValue(kLanguage, settings.language);
    to.setValue(kDays, dayFormatNames()[static_cast<int>(settings.days)]);
    to.setValue(kRecent, settings.recentCollections);
    to.setValue(kKeeper, settings.keeper);
    to.setValue(kGeometry, settings.windowGeometry);
}

Settings withRecent(Settings settings, const QString& folder) {
    settings.recentCollections.removeAll(folder);
    settings.recentCollections.prepend(folder);
    while (settings.recentCollections.size() > kMostRecent) settings.recentCollections.removeLast();
    return settings;
}

}  // namespace ringrule
