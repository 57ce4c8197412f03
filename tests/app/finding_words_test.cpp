// SPDX-License-Identifier: GPL-3.0-or-later
// What a finding is called, in English and in the second language.
#include "app/finding_words.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QTranslator>
#include <catch2/catch.hpp>
#include <memory>

#include "ringrule/judge/tank_growth.h"
#include "ringrule/judge/tank_level.h"
#include "ringrule/workflow/session_table.h"

using namespace ringrule;
using namespace std::chrono_literals;

namespace {

/// German as far as the build has it (without Qt's lrelease it has none), until this goes.
class German {
public:
    German() {
        for (const char* file : {"core_de", "ringrule_de"}) {
            auto words = std::make_unique<QTranslator>();
            QDir folder(QCoreApplication::applicationDirPath());
            bool found = false;
            do found = words->load(QString::fromUtf8(file), folder.filePath(QStringLiteral("translations")));
            while (!found && folder.cdUp());
            if (found && QCoreApplication::installTranslator(words.get())) words_.push_back(std::move(words));
        }
    }
    ~German() {
        for (const auto& words : words_) QCoreApplication::removeTranslator(words.get());
    }
    German(const German&) = delete;
    German& operator=(const German&) = delete;
    [[nodiscard]] bool spoken() const { return words_.size() == 2; }

private:
    std::vector<std::unique_ptr<QTranslator>> words_;
};

Finding slowTank() {
    TankGrowth growth;
    growth.tank = {1};
    growth.on = Date{2031y / 5 / 3};
    growth.partPercent = {-40.0, 3.0, 0.0};
    growth.low = true;
    return tankGrowthFinding(growth, "bay-3");
}

Finding thinTank() {
    TankLevel level;
    level.tank = {1};
    level.on = Date{2031y / 5 / 3};
    level.conditionChangePercent = {-8.0, 1.0, 0.0};
    level.low = true;
    return tankFinding(level, "bay-3");
}

/// P4 measured like P5, or like nobody.
Finding doubted(const std::vector<std::string>& fits) {
    Finding finding;
    finding.kind = FindingKind::MeasureDoubtful;
    finding.animalCode = "P4";
    finding.on = Date{2031y / 5 / 3};
    finding.by = {-12.0, 1.0, 0.0};
    finding.measure = "standard length";
    finding.comparedWith = fits;
    finding.sentence = "P4 measures 12 % shorter.";
    return finding;
}

}  // namespace

TEST_CASE("a doubted measure is called by whose it likely is") {
    CHECK(findingTitle(doubted({"P5"})) == "measure doubtful, likely a wrong card (P5?)");
    CHECK(findingLine(doubted({"P5"})) == "likely a wrong card (P5?)");
    CHECK(findingLine(doubted({})) == "measure doubtful");
    CHECK(findingTitle(doubted({})) == "measure doubtful");
    CHECK(findingComparedWith(doubted({"P5"})) == "P5");
    CHECK(findingComparedWith(doubted({})) == "its own past");
    CHECK(findingSubject(thinTank()) == "tank bay-3");
    CHECK(findingComparedWith(thinTank()) == "its own past");
    CHECK(findingComparedWith(slowTank()) == "published growth");
}

TEST_CASE("in German a slow tank and a thin one, a wrong card and another doubt, are told apart") {
    const German german;
    if (!german.spoken()) return;
    CHECK(findingSentence(slowTank()).startsWith("Becken bay-3 wächst als Ganzes langsamer als veröffentlicht: "));
    CHECK(findingSentence(thinTank()).startsWith("Becken bay-3 liegt als Ganzes unter seiner eigenen Vergangenheit: "));
    CHECK(findingTitle(slowTank()) == "Becken unter dem Üblichen");
    CHECK(findingComparedWith(slowTank()) == "dem veröffentlichten Wachstum");
    CHECK(findingTitle(doubted({"P5"})) == "Maß zweifelhaft, wohl falsche Karte (P5?)");
    CHECK(findingLine(doubted({"P5"})) == "wohl falsche Karte (P5?)");
    CHECK(findingSentence(doubted({"P5"})).endsWith("Es passt zu P5."));
    CHECK(findingTitle(doubted({})) == "Maß zweifelhaft");
    CHECK_FALSE(findingSentence(doubted({})).contains("Karte"));
}

TEST_CASE("every kind of finding, and all that is told of a tank, has its German words") {
    QFile file(QStringLiteral(RINGRULE_SOURCE_DIR "/translations/core_de.ts"));
    REQUIRE(file.open(QIODevice::ReadOnly));
    const QString words = QString::fromUtf8(file.readAll());
    const auto known = [&](const std::string& english) {
        INFO(english);
        CHECK(words.contains("<source>" + QString::fromStdString(english).toHtmlEscaped() + "</source>"));
    };
    for (const FindingKind kind :
         {FindingKind::BehindTankmates, FindingKind::Stalled, FindingKind::Thin, FindingKind::GettingThinner,
          FindingKind::NotFeeding, FindingKind::TankLow, FindingKind::MeasureDoubtful, FindingKind::CannotTell})
        known(findingWords(kind));
    for (const Finding& finding : {slowTank(), thinTank()}) {
        known(finding.measure);
        known(finding.nextStep);
        for (const std::string& reason : finding.otherReasons) known(reason);
    }
    for (const char* measure : {"standard length", "trunk depth for length", "days without food taken"}) known(measure);
}
