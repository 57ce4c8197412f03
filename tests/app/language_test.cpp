// SPDX-License-Identifier: GPL-3.0-or-later
// The second language: nothing of it is left untranslated, and the words reach the pages.
#include "app/language.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QTranslator>
#include <catch2/catch.hpp>

using namespace ringrule;

TEST_CASE("every word of the app has its German one") {
    QFile words(QStringLiteral(RINGRULE_SOURCE_DIR "/translations/ringrule_de.ts"));
    REQUIRE(words.open(QIODevice::ReadOnly));
    const QByteArray text = words.readAll();
    CHECK(text.count("<message") > 400);
    CHECK(text.count("unfinished") == 0);
    CHECK(text.count("<translation></translation>") == 0);
}

TEST_CASE("a translation that was built says a page's words in German") {
    // Above the test program, where the build puts it; without Qt's lrelease there is none.
    QTranslator german;
    QDir folder(QCoreApplication::applicationDirPath());
    bool found = false;
    do found = german.load(QStringLiteral("ringrule_de"), folder.filePath(QStringLiteral("translations")));
    while (!found && folder.cdUp());
    if (!found) return;
    CHECK(german.translate("ringrule::BoxPage", "Save the scale plate") == QStringLiteral("Maßplatte speichern"));
    CHECK(german.translate("AnimalsPage", "Animals") == QStringLiteral("Tiere"));
    CHECK(german.translate("ringrule::BroodsPage", ", %n young", nullptr, 3) == QStringLiteral(", %n Junge"));
    CHECK(shippedLanguages().contains(QStringLiteral("de")));
}
