// SPDX-License-Identifier: GPL-3.0-or-later
// Diets side by side: the page and the command line tell one answer.
#include "app/diets_page.h"

#include <QComboBox>
#include <QLabel>
#include <QTableView>
#include <catch2/catch.hpp>

#include "app/diet_pair_words.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

Date monthDay(int month) {
    return Date(std::chrono::days(22280 + 30 * month));
}

/// Invented: `count` animals on each of two diets in one tank, seen in six months. `bend` bows their growth, so that a
/// model over all sessions and the way from the first to the last tell other rates.
std::vector<AnimalHistory> twoDiets(int count, double moreOnSecond, double bend) {
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
            const double scatterMm = 0.08 * ((k * k * 7 + month * month * 3 + k * month) % 11 - 5);
            const double rateMm = 10.0 + 0.1 * (k % count) + (second ? moreOnSecond : 0.0);
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

}  // namespace

TEST_CASE("a pair of diets reads on the page as the engine tells it") {
    for (const auto& [count, more, bend] :
         {std::tuple{6, 3.0, 0.3}, std::tuple{6, -3.0, 0.0}, std::tuple{6, 0.0, 0.2}, std::tuple{2, 0.2, 0.0}}) {
        for (const bool tanks : {false, true}) {
            for (const EffectUnit unit : {EffectUnit::MmPerDay, EffectUnit::PercentPerDay}) {
                std::vector<DietAnimal> animals = dietAnimals(twoDiets(count, more, bend), monthDay(0), monthDay(5));
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
            }
        }
    }
}

TEST_CASE("the page compares diets by the same model as the command line, and says why it cannot") {
    Collection collection;
    collection.open(smallCollection());
    DietsPage page(collection);
    const auto* table = page.findChild<QTableView*>(QStringLiteral("groupTable"));
    const auto* label = page.findChild<QLabel*>(QStringLiteral("pairsLabel"));
    REQUIRE(table != nullptr);
    REQUIRE(label != nullptr);

    const std::vector<AnimalHistory> histories = twoDiets(4, 0.0, 0.3);
    collection.setReview(reviewWith(histories));
    auto* from = page.findChild<QComboBox*>(QStringLiteral("fromCombo"));
    REQUIRE(from != nullptr);
    REQUIRE(from->count() == 6);
    from->setCurrentIndex(5);
    emit from->activated(5);
    const auto engine = compareDietEffects(dietAnimals(histories, monthDay(0), monthDay(5)));
    REQUIRE(engine.ok());
    REQUIRE(table->model()->rowCount() == 2);
    for (int row = 0; row < 2; ++row) {
        const MixedEstimate& rate = engine.value().groups[static_cast<std::size_t>(row)].rate;
        CHECK(table->model()->index(row, DietGroupModel::Growth).data().toString() ==
              QString::asprintf("%.3f (%.3f to %.3f)", rate.value, rate.lower95, rate.upper95));
        CHECK(table->model()->index(row, DietGroupModel::Each).data().toString().count(',') == 3);
    }
    const DietEffect& pair = engine.value().pairs.front();
    CHECK(label->text().startsWith(QStringLiteral("•  ") + dietPairSentence(engine.value(), pair,
                                                                            collection.dietName({1}),
                                                                            collection.dietName({2}))));
    for (const std::string& caution : engine.value().cautions)
        CHECK(label->text().contains(QString::fromStdString(caution)));

    // An animal that moved is in neither part of the table.
    std::vector<AnimalHistory> moved = histories;
    moved[0].stays = {{moved[0].animal.id, {2}, monthDay(0), monthDay(2)}, {moved[0].animal.id, {1}, monthDay(2), {}}};
    collection.setReview(reviewWith(moved));
    from->setCurrentIndex(5);
    emit from->activated(5);
    CHECK(table->model()->index(0, DietGroupModel::Animals).data().toInt() == 3);
    CHECK_FALSE(table->model()->index(0, DietGroupModel::Each).data().toString().contains("P1 "));

    for (AnimalHistory& history : moved) history.dietSpells.front().diet = {1};
    collection.setReview(reviewWith(moved));
    from->setCurrentIndex(5);
    emit from->activated(5);
    CHECK(table->model()->rowCount() == 0);
    CHECK(label->text() == "Fewer than two diets were kept throughout this time by animals that stayed in one tank.");
}
