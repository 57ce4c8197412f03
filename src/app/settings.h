// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <array>

#include "app/day_text.h"

class QSettings;

namespace ringrule {

enum class Colours { AsSystem, Light, Dark };

/// Text sizes to choose from, in percent of the system's own.
inline constexpr std::array kTextPercents{100, 115, 130, 150};

/// What the app remembers between runs.
struct Settings {
    Colours colours = Colours::AsSystem;
    int textPercent = 100;  ///< one of `kTextPercents`
    QString language;       ///< ISO 639 code, or empty: the system's
    DayFormat days = DayFormat::YearFirst;
    QStringList recentCollections;  ///< newest first
    QString keeper;                 ///< initials last used for a session
    QByteArray windowGeometry;

    friend bool operator==(const Settings&, const Settings&) = default;
};

[[nodiscard]] Settings readSettings(const QSettings& from);
void writeSettings(QSettings& to, const Settings& settings);

/// The settings with `folder` as the newest collection; at most eight are kept.
[[nodiscard]] Settings withRecent(Settings settings, const QString& folder);

}  // namespace ringrule
