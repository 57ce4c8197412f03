// SPDX-License-Identifier: GPL-3.0-or-later
// What pages and sheets say of an animal: findings in tables, evidence charts, sheets to hand on.
#include <QTest>
#include <algorithm>
#include <catch2/catch.hpp>

#include "app/animal_table_model.h"
#include "app/growth_lines.h"
#include "app/photo_reader.h"
#include "app/sheet_of_animal.h"
#include "ringrule/error.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

Date day(int month) {
    return Date(std::chrono::days(22280 + 30 * month));
}

/// Three invented animals, seen in six months.
std::vector<AnimalHistory> threeHistories() {
    std::vector<AnimalHistory> histories(3);
    for (int k = 0; k < 3; ++k) {
        AnimalHistory& history = histories[static_cast<std::size_t>(k)];
        history.animal.id = {k + 1};
        history.animal.code = "P" + std::to_string(k + 1);
        for (int month = 0; month < 6; ++month) {
            Observation seen;
            seen.on = day(month);
            seen.standardLengthMm = {80.0 + 6.0 * month, 0.2, 0.1};
            seen.depthRatio = {0.035, 0.0002, 0.0001};
            seen.trunkWidthMm = {4.0, 0.02, 0.01};
            history.observations.push_back(seen);
        }
    }
    return histories;
}

Finding thinFinding() {
    Finding finding;
    finding.kind = FindingKind::Thin;
    finding.animal = {2};
    finding.animalCode = "P2";
    finding.on = day(3);
    finding.comparedWith = {"P3"};
    finding.measure = "condition index";
    return finding;
}

}  // namespace

TEST_CASE("an evidence chart shows the animal, those it was compared with, and nothing from after its day") {
    const Chart chart = evidenceChart(threeHistories(), thinFinding());
    REQUIRE(chart.series.size() == 2);
    CHECK(chart.series[0].label == "P2");
    CHECK(chart.series[0].highlighted);
    CHECK(chart.series[1].label == "P3");
    CHECK(chart.series[0].points.size() == 4);
    CHECK(chart.y.title == "Trunk depth ÷ standard length");
}

TEST_CASE("an evidence chart shows the measure that was compared") {
    Finding finding = thinFinding();
    finding.measure = "condition index by trunk width";
    CHECK(evidenceChart(threeHistories(), finding).y.title == "Trunk width ÷ standard length");
    finding.measure = "growth in length";
    CHECK(evidenceChart(threeHistories(), finding).y.title == "Standard length (mm)");
}

TEST_CASE("a change of food is marked on the charts, and nothing from after the day they tell of") {
    std::vector<AnimalHistory> histories = threeHistories();
    for (AnimalHistory& history : histories) history.stays = {{history.animal.id, {1}, day(0), {}}};
    histories[2].stays.front().to = day(1);
    histories[1].dietSpells = {{{2}, {1}, day(0) - std::chrono::days(30), day(2)}, {{2}, {2}, day(2), {}}};
    const auto [length, ratio] = changeCharts(histories, {2}, day(2), day(4));
    REQUIRE(length.marks.size() == 1);
    CHECK(length.marks[0].at == 22340.0);
    // The third animal had left the tank when the food was changed.
    CHECK(length.series.size() == 2);
    CHECK(length.series[1].highlighted);
    CHECK(ratio.series[0].points.size() == 5);
    CHECK(evidenceChart(histories, thinFinding()).marks.size() == 1);
}

TEST_CASE("the animal table says which animal needs a look, and why") {
    Collection collection;
    AnimalTableModel model(collection);
    collection.open(smallCollection());
    Review review;
    Finding finding = thinFinding();
    finding.animal = collection.animals()[1].id;
    review.findings = {finding, finding};
    collection.setReview(review);
    CHECK(model.index(0, AnimalTableModel::Look).data().toString().isEmpty());
    CHECK(model.index(1, AnimalTableModel::Look).data().toString() == "▼ thin");
}

TEST_CASE("an animal's sheet holds its photo, its tankmates and what is known of it") {
    const std::filesystem::path folder = smallCollection();
    Collection collection;
    collection.open(folder);
    collection.setReview(reviewOf(folder, std::nullopt));
    const AnimalSheet sheet = sheetOfAnimal(collection, collection.animals()[1].id);
    CHECK(sheet.history.animal.code == "P2");
    CHECK(sheet.tank == "Bay 3");
    CHECK(sheet.diet.empty());
    CHECK(formatDate(sheet.asOf) == "2031-01-06");
    CHECK(sheet.lines.size() == 3);
    CHECK(std::filesystem::exists(sheet.photo));
    REQUIRE(sheet.drawn);
    CHECK(sheet.drawn->outline.boundaryPx.size() > 20);
}

TEST_CASE("a new animal gets its tank, made when it is not there yet") {
    Collection collection;
    collection.open(smallCollection());
    Animal animal;
    animal.code = "Q1";
    animal.species = "Hippocampus reidi";
    animal.shape = "seahorse";
    animal.card = 40;
    collection.addAnimal(animal, "bay-9", day(0));
    REQUIRE(collection.animals().size() == 4);
    REQUIRE(collection.tanks().size() == 2);
    animal.code = "Q2";
    animal.card = 41;
    collection.addAnimal(animal, "bay-9", day(0));
    CHECK(collection.tanks().size() == 2);
    const std::vector<Stay> stays = collection.store().stays();
    CHECK(std::count_if(stays.begin(), stays.end(),
                        [&](const Stay& s) { return s.tank == collection.tanks().back().id; }) == 2);
    // A code is unique: nothing of a second one stays, not even its tank.
    CHECK_THROWS_AS(collection.addAnimal(animal, "bay-10", day(0)), Error);
    collection.reload();
    CHECK(collection.animals().size() == 5);
    CHECK(collection.tanks().size() == 2);
}

TEST_CASE("of photos asked for in quick succession only the newest is answered") {
    Collection collection;
    collection.open(smallCollection());
    const std::vector<StoredPhoto> photos = collection.store().photos(collection.sessions().front().id);
    PhotoReader reader;
    std::vector<PhotoId> answered;
    QObject::connect(&reader, &PhotoReader::answered,
                     [&](const PhotoAnswer& answer) { answered.push_back(answer.photo); });
    for (const StoredPhoto& photo : photos) {
        PhotoRequest request;
        request.photo = photo.id;
        request.original = collection.store().originalOf(photo);
        reader.read(request);
    }
    REQUIRE(QTest::qWaitFor([&] { return !reader.busy(); }, 20000));
    CHECK(answered == std::vector<PhotoId>{photos.back().id});
}
