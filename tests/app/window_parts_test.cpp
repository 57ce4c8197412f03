// SPDX-License-Identifier: GPL-3.0-or-later
// Settings, tables read in, what is dropped on the window, the last time beside now, and the chart's curve and story.
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QDropEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMimeData>
#include <QPushButton>
#include <QStackedWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QUrl>
#include <catch2/catch.hpp>
#include <fstream>

#include "app/appearance.h"
#include "app/camera_card.h"
#include "app/chart_widget.h"
#include "app/findings_page.h"
#include "app/growth_curve.h"
#include "app/growth_lines.h"
#include "app/growth_page.h"
#include "app/import_dialog.h"
#include "app/last_time.h"
#include "app/main_window.h"
#include "app/measure_table_model.h"
#include "app/new_session_dialog.h"
#include "app/picture_run.h"
#include "app/settings_dialog.h"
#include "ringrule/error.h"
#include "ringrule/workflow/species_file.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

namespace fs = std::filesystem;

fs::path in(const QTemporaryDir& place) {
    return place.path().toStdString();
}

std::string write(const fs::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
    return file.string();
}

/// Five animals of one age that grow alike, one a little behind the other, seen six times.
std::vector<AnimalHistory> grownAlike() {
    std::vector<AnimalHistory> histories(5);
    for (int k = 0; k < 5; ++k) {
        AnimalHistory& history = histories[static_cast<std::size_t>(k)];
        history.animal.id = {k + 1};
        history.animal.code = "A" + std::to_string(k + 1);
        for (int month = 0; month < 6; ++month) {
            Observation seen;
            seen.on = Date(std::chrono::days(22280 + 30 * month));
            seen.ageDays = 50.0 + 30.0 * month;
            // The wobble keeps the scatter from being nothing.
            seen.standardLengthMm = {60.0 + 12.0 * month + 0.8 * k + 0.3 * ((k * month) % 3), 0.2, 0.1};
            history.observations.push_back(seen);
        }
    }
    return histories;
}

}  // namespace

TEST_CASE("a camera card means its newest folder of photos; a file the folder it lies in") {
    const QTemporaryDir place;
    const fs::path card = in(place);
    fs::create_directories(card / "DCIM" / "100OLD");
    fs::create_directories(card / "DCIM" / "101NEW");
    fs::create_directories(card / "DCIM" / "EMPTY");
    const auto older = write(card / "DCIM" / "100OLD" / "a.jpg", "x");
    const auto newer = write(card / "DCIM" / "101NEW" / "b.jpg", "x");
    const auto now = fs::file_time_type::clock::now();
    fs::last_write_time(older, now - std::chrono::hours(48));
    fs::last_write_time(newer, now - std::chrono::hours(1));
    CHECK(photoFolderIn(card) == card / "DCIM" / "101NEW");
    CHECK(photoFolderIn(card / "DCIM") == card / "DCIM" / "101NEW");
    CHECK(photoFolderIn(older) == card / "DCIM" / "100OLD");
    CHECK(photoFolderIn(card / "DCIM" / "100OLD") == card / "DCIM" / "100OLD");
    CHECK_FALSE(isCollection(card));
    CHECK(isCollection(smallCollection()));
}

TEST_CASE("a folder dropped on the window becomes a session, its day read from the photos") {
    MainWindow window{Settings{}};
    window.resize(1280, 800);
    window.show();
    window.openCollection(smallCollection());
    waitUntilIdle(window);
    QMimeData dropped;
    dropped.setUrls({QUrl::fromLocalFile(QString::fromStdString(photosOfSmallCollection().string()))});
    QDragEnterEvent enter(QPoint(600, 400), Qt::CopyAction, &dropped, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window, &enter);
    CHECK(enter.isAccepted());
    QDropEvent event(QPointF(600, 400), Qt::CopyAction, &dropped, Qt::LeftButton, Qt::NoModifier);
    QString folder;
    QTimer watch;
    QObject::connect(&watch, &QTimer::timeout, [&] {
        auto* dialog = qobject_cast<NewSessionDialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) return;
        folder = QString::fromStdString(dialog->photoFolder().string());
        CHECK(formatDate(dialog->session().on) == "2031-01-06");
        dialog->reject();
    });
    watch.start(10);
    QApplication::sendEvent(&window, &event);
    REQUIRE(QTest::qWaitFor([&] { return !folder.isEmpty(); }, 10000));
    CHECK(folder.toStdString() == photosOfSmallCollection().string());
}

TEST_CASE("settings show what is set and give back what was changed") {
    Settings settings;
    settings.keeper = "K1";
    settings.days = DayFormat::DayFirst;
    JudgeOptions thresholds;
    SettingsDialog dialog(settings, &thresholds);
    CHECK(dialog.settings() == settings);
    CHECK(dialog.changedThresholds().empty());
    dialog.findChild<QLineEdit*>("keeperEdit")->setText("K2");
    dialog.findChild<QComboBox*>("daysCombo")->setCurrentIndex(2);
    dialog.findChild<QDoubleSpinBox*>("lag_sds")->setValue(2.5);
    CHECK(dialog.settings().keeper == "K2");
    CHECK(dialog.settings().days == DayFormat::MonthFirst);
    CHECK(dialog.changedThresholds() == std::map<std::string, double>{{"lag_sds", 2.5}});
}

TEST_CASE("a threshold that was set stands in the collection's species file, beside what stood there") {
    const QTemporaryDir place;
    setThresholdsOfCollection(in(place), {{"lag_sds", 2.5}, {"settle_days", 9.0}}, "set by K1 on 2031-09-02");
    const SpeciesFile file = speciesOfCollection(in(place));
    CHECK(file.rules.usual.lagging.lagSds == 2.5);
    CHECK(file.rules.usual.group.settleDays == 9);
    CHECK(file.facts.size() == shippedSpecies().facts.size());
    CHECK(file.set.size() == shippedSpecies().set.size() + 1);  // settle_days stood there before
    CHECK_THROWS_AS(setThresholdsOfCollection(in(place), {{"lag_sds", -1.0}}, "typing error"), Error);
    CHECK(speciesOfCollection(in(place)).rules.usual.lagging.lagSds == 2.5);
}

TEST_CASE("days are written as the keeper set them") {
    const Date day = *parseDate("2031-01-06");
    setDayFormat(DayFormat::DayFirst);
    CHECK(dayText(day) == "06.01.2031");
    setDayFormat(DayFormat::MonthFirst);
    CHECK(dayText(day) == "01/06/2031");
    setDayFormat(DayFormat::YearFirst);
    CHECK(dayText(day) == "2031-01-06");
    CHECK(dayOf(qDateOf(day)) == day);
}

TEST_CASE("a table is shown before it is read in; a bad line is named, and undo takes the rest out") {
    const QTemporaryDir place;
    Collection collection;
    collection.open(smallCollection());
    ImportDialog dialog(collection);
    auto* kind = dialog.findChild<QComboBox*>("kindCombo");
    kind->setCurrentIndex(kind->findData("note"));
    auto* readIn = dialog.findChild<QDialogButtonBox*>("buttons")->button(QDialogButtonBox::Ok);
    const auto* preview = dialog.findChild<QLabel*>("previewLabel");
    dialog.setFile(QString::fromStdString(
        write(in(place) / "bad.csv", "animal,on_day,text\nP1,2031-02-01,eats\nP99,2031-02-01,nobody\n")));
    CHECK(preview->text().contains("Line 3"));
    CHECK_FALSE(readIn->isEnabled());
    dialog.setFile(QString::fromStdString(
        write(in(place) / "good.csv", "animal,on_day,text\nP1,2031-02-01,eats\nP2,2031-02-01,shy\n")));
    REQUIRE(readIn->isEnabled());
    dialog.accept();
    CHECK(dialog.records() == 2);
    const AnimalId p1 = collection.animals().front().id;
    CHECK(collection.store().notes(p1).size() == 1);
    collection.undoStack().undo();
    CHECK(collection.store().notes(p1).empty());
}

TEST_CASE("the last time stands beside now: the best side photo that counts of the session before") {
    const auto folder = smallCollection();
    Store store = Store::open(folder);
    const Session first = store.sessions().front();
    StoredMeasure measure = store.measuresOfSession(first.id).front();
    REQUIRE(measure.animal.has_value());
    store.setAccepted(measure.id, true);
    CHECK_FALSE(lastTime(store, *measure.animal, View::Side, first.on).has_value());
    const auto last = lastTime(store, *measure.animal, View::Side, first.on + std::chrono::days(28));
    REQUIRE(last.has_value());
    CHECK(last->id == measure.id);
    CHECK_FALSE(lastTime(store, *measure.animal, View::Above, first.on + std::chrono::days(28)).has_value());
    store.setAccepted(measure.id, false);
    CHECK_FALSE(lastTime(store, *measure.animal, View::Side, first.on + std::chrono::days(28)).has_value());

    MeasureTableModel model;
    model.showBefore(measure.measurement, first.on);
    model.show(measure.measurement);
    CHECK(model.headerData(MeasureTableModel::Before, Qt::Horizontal, Qt::DisplayRole).toString() == "2031-01-06");
    CHECK(model.index(0, MeasureTableModel::Before).data() == model.index(0, MeasureTableModel::Now).data());
    model.showBefore({}, {});
    CHECK(model.index(0, MeasureTableModel::Before).data().toString() == QStringLiteral("–"));
}

TEST_CASE("a group's curve runs through its animals, and its band holds them") {
    const auto animals = grownAlike();
    const GrowthCurve curve = growthCurve(animals);
    REQUIRE(curve.refusal.empty());
    REQUIRE(curve.points.size() > 10);
    CHECK(curve.points.front().x == 50.0);
    CHECK(curve.points.back().x == 200.0);
    for (const ChartBandPoint& point : curve.points) {
        CHECK(point.low < point.middle);
        CHECK(point.middle < point.high);
    }
    // The middle animal's lengths, to 2 mm: the others lie 1.6 mm to either side.
    CHECK(curve.points.front().middle == Approx(61.6).margin(2.0));
    CHECK(curve.points.back().middle == Approx(121.9).margin(2.0));
    CHECK_FALSE(growthCurve({animals.front()}).refusal.empty());
    CHECK_FALSE(growthCurve(std::vector<AnimalHistory>(kMostFitted + 1)).refusal.empty());
}

TEST_CASE("of one animal diets are shaded and events marked, against date and against age") {
    Collection collection;
    collection.open(smallCollection());
    DietId diet;
    collection.change("a diet", [&](Store& store) { diet = store.addDiet({{}, "mixed", "Live and frozen", {}, 2.0}); });
    collection.reload();
    AnimalHistory history = grownAlike().front();
    history.dietSpells = {{history.animal.id, diet, history.observations.front().on, {}}};
    history.states = {{history.animal.id, "brooding", history.observations[2].on, {}}};
    Treatment bath;
    bath.animal = history.animal.id;
    bath.from = history.observations[3].on;
    bath.what = "freshwater bath";
    for (const TimeAxis time : {TimeAxis::ByDate, TimeAxis::ByAge}) {
        GrowthChartOptions options;
        options.time = time;
        Chart chart = growthChart(growthLines({history}, {history.animal.id}, {history.animal.id}),
                                  ChartMeasure::StandardLength, options);
        addStory(chart, history, {bath}, collection);
        REQUIRE(chart.spans.size() == 1);
        CHECK(chart.spans[0].label == "Live and frozen");
        CHECK(chart.spans[0].from == chart.series[0].points[0].x);
        REQUIRE(chart.marks.size() == 2);
        CHECK(chart.marks[0].at == chart.series[0].points[2].x);
        CHECK(chart.marks[1].label == "freshwater bath");
    }
}

TEST_CASE("the growth page says why there is no curve, and what a collection without readings needs") {
    Collection collection;
    GrowthPage page(collection);
    page.resize(1000, 700);
    page.show();
    collection.open(smallCollection());
    CHECK(page.findChild<ChartWidget*>()->chart().emptySentence.find("accept") != std::string::npos);
    collection.setReview(reviewOf(collection.folder(), std::nullopt));
    page.findChild<QAbstractButton*>("curveCheck")->click();
    REQUIRE(QTest::qWaitFor([&] { return !page.busy(); }, 20000));
    CHECK(page.findChild<ChartWidget*>()->chart().curve.empty());
    auto* which = page.findChild<QComboBox*>("tankCombo");
    CHECK(which->findText("Syngnathus typhle") > 0);
    which->setCurrentIndex(which->findText("Syngnathus typhle"));
    CHECK(page.findChild<QListView*>("animalList")->model()->rowCount() == 3);
}

TEST_CASE("where nothing is told the page of findings says what became of what was decided") {
    Collection collection;
    collection.open(smallCollection());
    FindingsPage page(collection);
    Review review = reviewOf(collection.folder(), std::nullopt);
    review.findings.clear();
    Decision decision;
    decision.animal = collection.animals().front().id;
    decision.on = *parseDate("2031-01-07");
    decision.finding = "thin";
    decision.decision = "measure-again";
    decision.note = "forgotten";
    collection.decide(decision);
    collection.setReview(review);
    const QString words = page.findChild<QLabel*>("emptyLabel")->text();
    for (const char* part : {"P1", "2031-01-07", "thin", "Measure again", "forgotten", "no session since"}) {
        INFO(words.toStdString());
        CHECK(words.contains(part));
    }
    collection.undoStack().undo();
    collection.setReview(review);
    CHECK_FALSE(page.findChild<QLabel*>("emptyLabel")->text().contains("Measure again"));
}

TEST_CASE("every page fits a small laptop's screen, at every text size") {
    for (const int percent : kTextPercents) {
        setAppearance(Colours::Light, percent);
        MainWindow window{Settings{}};
        window.openCollection(smallCollection());
        waitUntilIdle(window);
        std::string widths;
        for (const QWidget* page :
             window.findChild<QStackedWidget*>("pages")->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
            widths += page->metaObject()->className() + (" " + std::to_string(page->minimumSizeHint().width())) + "; ";
        INFO(percent << " % text: " << widths);
        CHECK(window.minimumSizeHint().width() <= 1280);
        CHECK(window.minimumSizeHint().height() <= 800);
    }
    setAppearance(Colours::Light, 100);
}
