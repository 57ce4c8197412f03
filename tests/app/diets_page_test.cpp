// SPDX-License-Identifier: GPL-3.0-or-later
// Diets side by side: the page and the command line tell one answer.
#include "app/diets_page.h"

#include <QComboBox>
#include <QLabel>
#include <QTableView>
#include <catch2/catch.hpp>
#include <memory>

#include "app/diet_pair_words.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

Date monthDay(int month) {
    return Date(std::chrono::days(22280 + 30 * month));
}

/// Invented: `count` animals on each of two diets in one tank, seen in six months. `bend` bows their growth, so that a
/// model over all sessions and the way from the first to the last tell other rates; `spread` widens what
/// single lengths scatter by.
std::vector<AnimalHistory> twoDiets(int count, double moreOnSecond, double bend, double spread = 1.0) {
    std::vector<AnimalHistory> histories;
    for (int k = 0; k < 2 * count; ++k) {
        AnimalHistory& history = histories.emplace_back();
        history.animal.id = {k + 1};
        history.animal.code = "P" + std::to_string(k + 1);
        history.animal.species = "Syngnathus typhle";
        history.stays = {{history.animal.id, {1}, monthDay(0), {}}};
        const bool second = k >= count;
        history.dietSpells = {{history.animal.id, {second ? 2 : 1}, monthDay(0), {}}};
        for (int month = 0; month < 6; ++month) {
            Observation seen;
            seen.on = monthDay(month);
            const double scatterMm = 0.08 * spread * ((k * k * 7 + month * month * 3 + k * month) % 11 - 5);
            const double rateMm = 10.0 + 0.1 * ((k * 3) % count) + (second ? moreOnSecond : 0.0);
            seen.standardLengthMm = {70.0 + rateMm * month - bend * month * month + scatterMm, 0.2, 0.1};
            history.observations.push_back(seen);
        }
    }
    return histories;
}

Review reviewWith(std::vector<AnimalHistory> histories) {
    Review review;
    review.histories = std::move(histories);
    for (int month = 5; month >= 0; --month) review.days.push_back(monthDay(month));
    review.asOf = monthDay(5);
    return review;
}

/// What the engine says of a pair in English, with names for "the first" and "the second diet".
QString engineWords(const DietEffect& pair) {
    QString words = QString::fromStdString(pair.sentence);
    return words.replace("the second diet", "B").replace("the first", "A");
}

/// The page over histories, from their first session to their last.
struct ShownDiets {
    explicit ShownDiets(const std::vector<AnimalHistory>& histories) {
        collection.open(smallCollection());
        page = std::make_unique<DietsPage>(collection);
        collection.setReview(reviewWith(histories));
        auto* from = page->findChild<QComboBox*>(QStringLiteral("fromCombo"));
        REQUIRE(from->count() == 6);
        from->setCurrentIndex(5);
        emit from->activated(5);
    }
    [[nodiscard]] int rows() const { return table().rowCount(); }
    [[nodiscard]] QString cell(int row, int column) const { return table().index(row, column).data().toString(); }
    [[nodiscard]] QString words() const { return page->findChild<QLabel*>(QStringLiteral("pairsLabel"))->text(); }
    [[nodiscard]] const QAbstractItemModel& table() const {
        return *page->findChild<QTableView*>(QStringLiteral("groupTable"))->model();
    }

    Collection collection;
    std::unique_ptr<DietsPage> page;
};

}  // namespace

TEST_CASE("a pair of diets reads on the page as the engine tells it") {
    QStringList said;
    // Few and many animals, alike and not, so that every verdict and every way of what would be enough is said.
    for (const auto& [count, more, bend, spread] :
         {std::tuple{6, 3.0, 0.3, 1.0}, std::tuple{6, -3.0, 0.0, 1.0}, std::tuple{6, 0.0, 0.2, 1.0},
          std::tuple{2, 0.2, 0.0, 1.0}, std::tuple{4, 0.2, 0.0, 8.0}, std::tuple{6, 0.5, 0.0, 20.0},
          std::tuple{3, 0.5, 0.0, 10.0}}) {
        for (const bool tanks : {false, true}) {
            for (const EffectUnit unit : {EffectUnit::MmPerDay, EffectUnit::PercentPerDay}) {
                std::vector<DietAnimal> animals =
                    dietAnimals(twoDiets(count, more, bend, spread), monthDay(0), monthDay(5));
                REQUIRE(animals.size() == static_cast<std::size_t>(2 * count));
                // Tanks of two animals each: one tank a diet when there are two animals on each.
                for (DietAnimal& one : animals)
                    if (tanks) one.tank = (one.animal + 1) / 2;
                DietEffectOptions options;
                options.unit = unit;
                const auto outcome = compareDietEffects(animals, options);
                INFO((outcome.ok() ? std::string() : outcome.refusal().sentence));
                REQUIRE(outcome.ok());
                const DietEffect& pair = outcome.value().pairs.front();
                INFO(pair.sentence);
                CHECK(dietPairSentence(outcome.value(), pair, "A", "B") == engineWords(pair));
                said << engineWords(pair);
            }
        }
    }
    for (const char* words :
         {"more than chance explains", "is ruled out", "Too few to tell", "With so few animals", "With so few tanks",
          "in a single tank", "animals on each diet over the same time.", "tanks on each diet"}) {
        INFO(words);
        CHECK(said.join(' ').contains(words));
    }
}

TEST_CASE("what would be enough to tell two diets apart is said in animals, in months, or in both") {
    DietEffects effects;
    effects.unit = EffectUnit::PercentPerDay;
    DietEffect pair;
    pair.effect = -0.02;
    pair.difference = MixedEstimate{-0.02, 0.05, 4.0, -0.12, 0.08};
    pair.enough.difference = 0.07;
    pair.enough.months = 5.2;
    const QString seen =
        "Animals on %2 B grew by 0.02 % a day less than on A (95 % interval 0.12 less to 0.08 more). Too few to tell. ";
    CHECK(dietPairSentence(effects, pair, "A", "%2 B") ==
          seen + "To tell a difference of 0.07 % a day would take these animals over about 6 months.");
    pair.enough.unitsPerDiet = 15;
    CHECK(dietPairSentence(effects, pair, "A", "%2 B") ==
          seen +
              "To tell a difference of 0.07 % a day would take about 15 animals on each diet over the same time, or "
              "these animals over about 6 months.");
    pair.difference.reset();
    CHECK(dietPairSentence(effects, pair, "A", "%2 B") ==
          "Animals on %2 B grew by 0.02 % a day less than on A. Too few to tell. One of the two was given to a single "
          "animal, which does not show how much animals differ anyway; give each diet in two or more.");
}

TEST_CASE("the page compares diets by the same model as the command line") {
    const std::vector<AnimalHistory> histories = twoDiets(4, 0.0, 0.3);
    const ShownDiets shown(histories);
    const auto engine = compareDietEffects(dietAnimals(histories, monthDay(0), monthDay(5)));
    REQUIRE(engine.ok());
    REQUIRE(shown.rows() == 2);
    for (int row = 0; row < 2; ++row) {
        const MixedEstimate& rate = engine.value().groups[static_cast<std::size_t>(row)].rate;
        CHECK(shown.cell(row, DietGroupModel::Growth) ==
              QString::asprintf("%.3f (%.3f to %.3f)", rate.value, rate.lower95, rate.upper95));
        CHECK(shown.cell(row, DietGroupModel::Each).count(',') == 3);  // four animals
    }
    const QString words = dietPairSentence(engine.value(), engine.value().pairs.front(), shown.collection.dietName({1}),
                                           shown.collection.dietName({2}));
    CHECK(shown.words().startsWith(QStringLiteral("•  ") + words));
    for (const std::string& caution : engine.value().cautions)
        CHECK(shown.words().contains(QString::fromStdString(caution)));
}

TEST_CASE("an animal that moved is in neither part of the table, and what cannot be compared says why") {
    std::vector<AnimalHistory> histories = twoDiets(4, 0.0, 0.3);
    const AnimalId moved = histories[0].animal.id;
    histories[0].stays = {{moved, {2}, monthDay(0), monthDay(2)}, {moved, {1}, monthDay(2), {}}};
    const ShownDiets shown(histories);
    REQUIRE(shown.rows() == 2);
    CHECK(shown.cell(0, DietGroupModel::Animals) == "3");
    CHECK_FALSE(shown.cell(0, DietGroupModel::Each).contains("P1 "));
    for (AnimalHistory& history : histories) history.dietSpells.front().diet = {1};
    const ShownDiets alike(histories);
    CHECK(alike.rows() == 0);
    CHECK(alike.words() == "Fewer than two diets were kept throughout this time by animals that stayed in one tank.");
}
