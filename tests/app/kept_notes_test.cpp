// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/kept_notes.h"

#include <QLocale>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "app/core_text.h"

using namespace ringrule;

TEST_CASE("half typed notes are kept apart, one a subject, and gone once they are empty") {
    const QTemporaryDir place;
    const std::filesystem::path folder = place.path().toStdString();
    KeptNotes(folder).keep("P4/thin", "offer mysids");
    KeptNotes(folder).keep("P5/stalled", QStringLiteral("prüfen"));
    CHECK(KeptNotes(folder).of("P4/thin") == "offer mysids");
    CHECK(KeptNotes(folder).of("P5/stalled") == QStringLiteral("prüfen"));
    KeptNotes(folder).keep("P4/thin", {});
    CHECK(KeptNotes(folder).of("P4/thin").isEmpty());
    KeptNotes(folder).keep("P5/stalled", {});
    CHECK_FALSE(std::filesystem::exists(folder / "drafts" / "notes.json"));
}

TEST_CASE("numbers have the decimal sign of the language; days and versions are none") {
    const QLocale before;
    QLocale::setDefault(QLocale(QLocale::German));
    CHECK(numberText({132.41, 0.3, 0.0}) == QStringLiteral("132,4 ± 0,6"));
    CHECK(ownFigure("06.01.2031") == "06.01.2031");
    CHECK(ownFigure("2031-01-06") == "2031-01-06");
    CHECK(ownFigure("0.143 to 0.162") == "0,143 to 0,162");
    QLocale::setDefault(QLocale::c());
    CHECK(numberText({132.41, 0.3, 0.0}) == QStringLiteral("132.4 ± 0.6"));
    QLocale::setDefault(before);
}

TEST_CASE("a reason that holds figures is told by its id where the sentence has no translation") {
    // Without a translation English stays, never the id.
    CHECK(reasonText("too-few-markers", "Only 2 of the plate's 8 markers can be seen.") ==
          "Only 2 of the plate's 8 markers can be seen.");
}
