// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>

class QSettings;

namespace ringrule {

enum class Colours { AsSystem, Light, Dark };

/// What the app remembers between runs.
struct Settings {
    Colours colours = Colours::AsSystem;
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
