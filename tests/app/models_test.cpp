// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QSortFilterProxyModel>
#include <catch2/catch.hpp>

#include "app/animal_choice_model.h"
#include "app/animal_table_model.h"
#include "app/diet_change_model.h"
#include "app/diet_group_model.h"
#include "app/finding_list_model.h"
#include "app/history_table_model.h"
#include "app/measure_table_model.h"
#include "app/photo_list_model.h"
#include "app/review.h"
#include "app/two_line_delegate.h"
#include "ringrule/workflow/stored_correction.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

/// Qt's own checks of a model; a broken rule of theirs ends the test program.
struct Tested {
    explicit Tested(QAbstractItemModel& model)
        : tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal) {}
    QAbstractItemModelTester tester;
};

void readEverything(const QAbstractItemModel& model) {
    for (int row = 0; row < model.rowCount(); ++row)
        for (int column = 0; column < model.columnCount(); ++column)
            for (int role = 0; role < Qt::UserRole + 5; ++role) (void)model.data(model.index(row, column), role);
}

}  // namespace

TEST_CASE("the photo list holds a session's photos and follows their changes") {
    Collection collection;
    collection.open(smallCollection());
    PhotoListModel model(collection);
    const Tested tested(model);
    CHECK(model.rowCount() == 0);
    model.showSession(collection.sessions().front().id);
    REQUIRE(model.rowCount() == 3);
    readEverything(model);
    CHECK(model.data(model.index(0), Qt::DisplayRole).toString() == "P1, side");
    const auto& first = model.row(0);
    REQUIRE(first.measures.size() == 1);
    const MeasureId measure = first.measures.front().id;
    QSignalSpy changes(&model, &QAbstractItemModel::dataChanged);
    collection.assign(first.photo, measure, std::nullopt);
    CHECK(changes.count() == 1);
    CHECK(model.data(model.index(0), Qt::DisplayRole).toString() == "not identified, side");
    collection.settle(model.row(0).photo, {}, {measure});
    CHECK(model.row(0).state == PhotoState::Accepted);
    CHECK(model.data(model.index(0), SecondLineRole).toString() == stateWords(PhotoState::Accepted));
    model.showSession(std::nullopt);
    CHECK(model.rowCount() == 0);
}

TEST_CASE("what was seen once and is seen no more does not spoil the state of its photo") {
    StoredMeasure fine;
    fine.accepted = true;
    fine.measurement.standardLengthMm = {65.0, 0.2, 0.1};
    StoredMeasure gone;
    gone.measurement.refusal = Refusal{std::string(kSeenNoMore), "No animal was found."};
    StoredMeasure closed;
    closed.measurement.refusal = Refusal{"tail-closed", "The tail closes on itself."};
    CHECK(stateOf({fine, gone}) == PhotoState::Accepted);
    CHECK(stateOf({fine, gone, closed}) == PhotoState::CannotTell);
    CHECK(stateOf(std::vector{gone}) == PhotoState::NotMeasured);
}

TEST_CASE("the animal table shows each animal with its newest measures, and sorts by number") {
    Collection collection;
    AnimalTableModel model(collection);
    const Tested tested(model);
    const std::filesystem::path folder = smallCollection();
    collection.open(folder);
    REQUIRE(model.rowCount() == 3);
    CHECK(model.data(model.index(0, AnimalTableModel::LastSeen), Qt::DisplayRole).toString() == "not yet");
    collection.setReview(reviewOf(folder, std::nullopt));
    readEverything(model);
    CHECK(model.data(model.index(1, AnimalTableModel::Code), Qt::DisplayRole).toString() == "P2");
    CHECK(model.data(model.index(1, AnimalTableModel::TankColumn), Qt::DisplayRole).toString() == "bay-3");
    CHECK(model.data(model.index(1, AnimalTableModel::LastSeen), Qt::DisplayRole).toString() == "2031-01-06");
    CHECK(model.data(model.index(1, AnimalTableModel::Length), Qt::DisplayRole).toString().contains("±"));

    QSortFilterProxyModel sorted;
    const Tested testedProxy(sorted);
    sorted.setSourceModel(&model);
    sorted.setSortRole(AnimalTableModel::kSortRole);
    sorted.sort(AnimalTableModel::Length, Qt::DescendingOrder);
    const auto lengthAt = [&](int row) {
        return sorted.index(row, AnimalTableModel::Length).data(AnimalTableModel::kSortRole).toDouble();
    };
    CHECK(lengthAt(0) >= lengthAt(1));
    CHECK(lengthAt(1) >= lengthAt(2));
    CHECK(lengthAt(2) > 0.0);
}

TEST_CASE("the measure table says what cannot be told and never prints a bare number") {
    MeasureTableModel model;
    const Tested tested(model);
    Measurement measurement;
    measurement.shape = Shape::Pipefish;
    measurement.standardLengthMm = {132.4, 0.3, 0.1};
    model.show(measurement);
    readEverything(model);
    REQUIRE(model.rowCount() > 5);
    for (int row = 0; row < model.rowCount(); ++row) {
        const QString value = model.index(row, 1).data().toString();
        CHECK((value.contains("±") || value == "cannot tell"));
    }
    model.clear();
    CHECK(model.rowCount() == 0);
}

TEST_CASE("the history table is newest first") {
    HistoryTableModel model;
    const Tested tested(model);
    std::vector<Observation> observations(3);
    for (int k = 0; k < 3; ++k) observations[static_cast<std::size_t>(k)].on = Date(std::chrono::days(22000 + 30 * k));
    observations[1].girthFair = false;
    model.show(observations);
    readEverything(model);
    CHECK(model.index(0, 0).data().toString() > model.index(2, 0).data().toString());
    CHECK(model.index(1, 0).data().toString().contains("carrying"));
    CHECK(model.index(0, HistoryTableModel::Length).data().toString() == "–");
}

TEST_CASE("the finding list names animal and kind") {
    FindingListModel model;
    const Tested tested(model);
    Finding finding;
    finding.kind = FindingKind::Thin;
    finding.animalCode = "P4";
    finding.sentence = "P4 is thinner than its tankmates.";
    model.show({finding, finding});
    readEverything(model);
    CHECK(model.rowCount() == 2);
    CHECK(model.index(0).data().toString() == "P4");
    CHECK(model.index(0).data(Qt::AccessibleTextRole).toString() == "P4: thin");
    CHECK_FALSE(model.index(0).data(SignRole).toString().isEmpty());
    model.show({});
    CHECK(model.rowCount() == 0);
}

TEST_CASE("diet tables name diets and verdicts and never print a bare rate") {
    Collection collection;
    collection.open(smallCollection());
    DietChangeModel changes(collection);
    const Tested testedChanges(changes);
    DietChange change;
    change.animalCode = "P4";
    change.rateMmPerDay.before = {0.12, 0.02, 0.0};
    change.rateMmPerDay.verdict = AfterChange::Improved;
    changes.show({change});
    readEverything(changes);
    CHECK(changes.index(0, DietChangeModel::RateBefore).data().toString() == "0.12 ± 0.04");
    CHECK(changes.index(0, DietChangeModel::RateAfter).data().toString() == "–");
    CHECK(changes.index(0, DietChangeModel::RateVerdict).data().toString().contains("better"));
    CHECK(changes.index(0, DietChangeModel::ConditionVerdict).data().toString() == "too early to tell");
    CHECK(changes.index(0, DietChangeModel::From).data().toString() == "not told");
}

TEST_CASE("diets side by side show the comparison's growth with its interval, and each animal's own rate") {
    Collection collection;
    collection.open(smallCollection());
    DietGroupModel groups(collection);
    const Tested tested(groups);
    DietEffects effects;
    effects.groups = {{7, 2, 1, {0.4512, 0.01, 3.0, 0.4181, 0.4843}}, {8, 1, 1, {-0.0104, std::nan(""), 0.0}}};
    effects.tanksAreUnits = true;
    DietGroup own;
    own.diet = {7};
    own.codes = {"P1", "P2"};
    own.mmPerDay = {0.4, 0.5};
    groups.show(effects, {own});
    readEverything(groups);
    CHECK(groups.index(0, DietGroupModel::Animals).data().toInt() == 2);
    CHECK(groups.index(0, DietGroupModel::Growth).data().toString() == "0.451 (0.418 to 0.484)");
    CHECK(groups.index(0, DietGroupModel::Each).data().toString() == "P1 0.400,  P2 0.500");
    CHECK(groups.index(1, DietGroupModel::Growth).data().toString() == QStringLiteral("\u22120.010, one tank alone"));
    CHECK(groups.index(1, DietGroupModel::Each).data().toString().isEmpty());
    const auto header = [&](int section) {
        return groups.headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
    };
    CHECK(header(DietGroupModel::Growth) == "Growth, mm/day (95 %)");
    CHECK(header(DietGroupModel::Each).contains("own rate, mm/day"));
    effects.unit = EffectUnit::PercentPerDay;
    groups.show(effects, {own});
    CHECK(header(DietGroupModel::Growth) == "Growth, % a day (95 %)");
    CHECK(header(DietGroupModel::Each).contains("own rate, mm/day"));
    groups.clear();
    CHECK(groups.rowCount() == 0);
}

TEST_CASE("animals are ticked for a chart one by one") {
    AnimalChoiceModel model;
    const Tested tested(model);
    std::vector<Animal> animals(2);
    animals[0].code = "P1";
    animals[1].code = "P2";
    animals[1].id = {7};
    model.show(animals);
    readEverything(model);
    CHECK(model.ticked(1));
    CHECK(model.setData(model.index(1), Qt::Unchecked, Qt::CheckStateRole));
    CHECK_FALSE(model.ticked(1));
    CHECK(model.ticked(0));
    CHECK(model.rowOf({7}) == 1);
    CHECK_FALSE(model.setData(model.index(0), "x", Qt::EditRole));
}
