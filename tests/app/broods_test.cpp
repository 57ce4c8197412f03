// SPDX-License-Identifier: GPL-3.0-or-later
// Broods: those on record, those known by a hatch day, what is due, and their chart.
#include <QAbstractItemModelTester>
#include <QStackedWidget>
#include <QTableView>
#include <catch2/catch.hpp>

#include "app/broods_page.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

Date day(int number) {
    return Date(std::chrono::days(22000 + number));
}

AnimalHistory young(std::int64_t id, Date hatched, double lengthMm) {
    AnimalHistory history;
    history.animal.id = {id};
    history.animal.code = "Y" + std::to_string(id);
    history.animal.species = "Hippocampus reidi";
    history.animal.hatchedOn = hatched;
    for (int month = 1; month <= 3; ++month) {
        Observation seen;
        seen.on = hatched + std::chrono::days(30 * month);
        seen.standardLengthMm = {lengthMm * month, 0.1, 0.1};
        history.observations.push_back(seen);
    }
    return history;
}

}  // namespace

TEST_CASE("animals of one species that hatched on one day are a brood; an animal alone is none") {
    const std::vector<AnimalHistory> histories{young(1, day(0), 20.0), young(2, day(0), 22.0), young(3, day(40), 20.0)};
    const std::vector<BroodGroup> groups = broodGroups(histories, {}, day(95));
    REQUIRE(groups.size() == 1);
    CHECK(groups[0].animals.size() == 2);
    CHECK(groups[0].bornOn == day(0));
    CHECK(groups[0].measured == 2);
    CHECK_THAT(groups[0].meanLengthMm, Catch::WithinAbs(63.0, 1e-9));
    // As it stood earlier, later sessions do not count.
    CHECK_THAT(broodGroups(histories, {}, day(35))[0].meanLengthMm, Catch::WithinAbs(21.0, 1e-9));
}

TEST_CASE("a birth is due by the species' brooding time after the last egg transfer, until it is noted") {
    BroodRecord record;
    record.brood.id = {5};
    record.brood.code = "R3";
    record.brood.species = "Hippocampus erectus";
    record.events = {{{5}, day(0), "courting", {}, {}}, {{5}, day(2), "egg-transfer", {}, {}}};
    const std::vector<BroodGroup> carried = broodGroups({}, std::vector{record}, day(5));
    REQUIRE(carried.size() == 1);
    REQUIRE(carried[0].due.has_value());
    CHECK(carried[0].due->from == day(13));
    CHECK(carried[0].due->until == day(25));
    record.events.push_back({{5}, day(20), "birth", 240, {}});
    const std::vector<BroodGroup> born = broodGroups({}, std::vector{record}, day(30));
    CHECK_FALSE(born[0].due.has_value());
    CHECK(born[0].bornOn == day(20));
    CHECK(born[0].young == 240);
}

TEST_CASE("the brood chart has one line a brood, the chosen one picked out, with the spread between its animals") {
    const std::vector<AnimalHistory> histories{young(1, day(0), 20.0), young(2, day(0), 22.0), young(3, day(40), 19.0),
                                               young(4, day(40), 21.0)};
    const std::vector<BroodGroup> groups = broodGroups(histories, {}, day(200));
    const Chart chart = broodChart(histories, groups, 1);
    REQUIRE(chart.series.size() == 2);
    CHECK_FALSE(chart.series[0].highlighted);
    CHECK(chart.series[1].highlighted);
    CHECK(chart.series[0].style != chart.series[1].style);
    CHECK(chart.series[1].points.front().x == 30.0);
    // Two animals 20 and 22 mm: standard deviation √2.
    CHECK_THAT(chart.series[1].points.front().u95, Catch::WithinAbs(1.959964 * std::sqrt(2.0), 1e-9));
    CHECK(broodChart({}, {}, 0).series.empty());
    CHECK_FALSE(broodChart({}, {}, 0).emptySentence.empty());
}

TEST_CASE("the brood page shows the broods of the review and keeps what is noted") {
    Collection collection;
    const std::filesystem::path folder = smallCollection();
    collection.open(folder);
    BroodsPage page(collection);
    CHECK(page.findChild<QStackedWidget*>("sides")->currentWidget()->objectName() == "emptySide");
    collection.setReview(reviewOf(folder, std::nullopt));
    auto& table = *page.findChild<QTableView*>("broodTable");
    const QAbstractItemModelTester tested(table.model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
    REQUIRE(table.model()->rowCount() == 1);
    CHECK(table.model()->index(0, BroodTableModel::Animals).data().toString() == "3");
    Brood brood;
    brood.code = "R3";
    brood.species = "Hippocampus reidi";
    collection.addBrood(brood);
    const BroodId id = collection.store().broods().front().id;
    collection.addBroodEvent({id, *parseDate("2031-01-02"), "egg-transfer", {}, {}});
    collection.setReview(reviewOf(folder, std::nullopt));
    REQUIRE(table.model()->rowCount() == 2);
    CHECK(table.model()->index(0, BroodTableModel::Code).data().toString() == "R3");
    CHECK(table.model()->index(0, BroodTableModel::Due).data().toString() == "2031-01-14 to 2031-01-19");
}
