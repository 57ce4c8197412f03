// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/settings.h"

#include <QSettings>
#include <QTemporaryDir>
#include <catch2/catch.hpp>
#include <vector>

using namespace ringrule;

TEST_CASE("every setting goes to the file and comes back") {
    std::vector<Settings> all;
    for (const Colours colours : {Colours::AsSystem, Colours::Light, Colours::Dark}) {
        Settings one;
        one.colours = colours;
        all.push_back(one);
    }
    for (const int percent : kTextPercents) {
        Settings one;
        one.textPercent = percent;
        all.push_back(one);
    }
    for (const DayFormat days : {DayFormat::YearFirst, DayFormat::DayFirst, DayFormat::MonthFirst}) {
        Settings one;
        one.days = days;
        all.push_back(one);
    }
    Settings language;
    language.language = "de";
    all.push_back(language);
    Settings recent;
    recent.recentCollections = {"/a folder/with, comma", "/b/ü"};
    all.push_back(recent);
    recent.recentCollections = {"/single"};
    all.push_back(recent);
    Settings keeper;
    keeper.keeper = "K2";
    all.push_back(keeper);
    Settings geometry;
    geometry.windowGeometry = QByteArray("\0\x01\xff;=", 5);
    all.push_back(geometry);

    const QTemporaryDir folder;
    for (std::size_t k = 0; k < all.size(); ++k) {
        const QString path = folder.filePath(QString::number(k) + ".ini");
        {
            QSettings to(path, QSettings::IniFormat);
            writeSettings(to, all[k]);
        }
        CHECK(readSettings(QSettings(path, QSettings::IniFormat)) == all[k]);
    }
}

TEST_CASE("nothing stored gives the defaults") {
    const QTemporaryDir folder;
    CHECK(readSettings(QSettings(folder.filePath("none.ini"), QSettings::IniFormat)) == Settings{});
}

TEST_CASE("a text size that is none of those to choose from is not taken over") {
    const QTemporaryDir folder;
    QSettings store(folder.filePath("odd.ini"), QSettings::IniFormat);
    store.setValue("view/text-percent", 9000);
    CHECK(readSettings(store).textPercent == 100);
}

TEST_CASE("the newest collection comes first, once, and eight are kept") {
    Settings settings;
    for (int k = 0; k < 12; ++k) settings = withRecent(settings, QString::number(k));
    CHECK(settings.recentCollections.size() == 8);
    CHECK(settings.recentCollections.front() == "11");
    settings = withRecent(settings, "7");
    CHECK(settings.recentCollections.front() == "7");
    CHECK(settings.recentCollections.count("7") == 1);
}
