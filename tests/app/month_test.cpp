// SPDX-License-Identifier: GPL-3.0-or-later
// A month's session by the window's own controls: from a folder of photos, one of them cut short, over a stop in the
// middle, a correction that outlives the window, to what is decided on an animal that was not photographed.
#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QListWidget>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>
#include <fstream>

#include "app/animal_photos.h"
#include "app/chart_widget.h"
#include "app/findings_page.h"
#include "app/landmark_item.h"
#include "app/main_window.h"
#include "app/message_strip.h"
#include "app/natural_order.h"
#include "app/photo_strip.h"
#include "app/photo_view.h"
#include "app/picture_run.h"
#include "app/session_page.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

namespace fs = std::filesystem;

template <class Widget>
Widget& part(const MainWindow& window, const char* name) {
    auto* found = window.findChild<Widget*>(QString::fromUtf8(name));
    REQUIRE(found != nullptr);
    return *found;
}

/// Photos of P1 and P2 a month later; P3 was forgotten, and one file was cut short on its way.
fs::path nextMonth(const QTemporaryDir& place) {
    const fs::path source = fs::path(RINGRULE_SOURCE_DIR) / "sample_images" / "2031-02-03";
    const fs::path photos = fs::path(place.path().toStdString()) / "february";
    fs::create_directories(photos);
    for (const char* name : {"P1-a_rendered.jpg", "P2-a_rendered.jpg"}) fs::copy_file(source / name, photos / name);
    std::ifstream whole(source / "P1-b_rendered.jpg", std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(whole), {}};
    std::ofstream(photos / "P1-b_rendered.jpg", std::ios::binary) << bytes.substr(0, bytes.size() / 3);
    return photos;
}

std::unique_ptr<MainWindow> windowOn(const fs::path& folder) {
    auto window = std::make_unique<MainWindow>(Settings{});
    window->resize(1300, 820);
    window->show();
    window->openCollection(folder);
    waitUntilIdle(*window);
    return window;
}

void measure(MainWindow& window, const fs::path& photos) {
    Session session;
    session.on = *parseDate("2031-02-03");
    session.keeper = "K2";
    window.measureSession(photos, session, window.collection().boxes().front());
}

double lengthOf(const MainWindow& window) {
    const auto& page = *window.findChild<SessionPage*>();
    return page.draft()->reading().animals.front().measurement.standardLengthMm.value;
}

/// Moves the tail's end by its arrow key, ten pixels a press.
void moveTail(const MainWindow& window, int presses) {
    auto& view = part<PhotoView>(window, "photoView");
    view.setFocus();
    for (int k = 0; k < presses; ++k) {
        LandmarkItem* tail = view.landmarkItem(LandmarkName::TailEnd);
        REQUIRE(tail != nullptr);
        tail->setFocus();
        QTest::keyClick(view.viewport(), Qt::Key_Left, Qt::ShiftModifier);
        QApplication::processEvents();
    }
}

}  // namespace

TEST_CASE("a month's session, from folder to decision") {
    const QTemporaryDir place;
    const fs::path photos = nextMonth(place), folder = smallCollection();
    auto window = windowOn(folder);

    // Stopped in the middle, nothing is left of it.
    measure(*window, photos);
    for (auto* button : window->findChildren<QPushButton*>())
        if (button->accessibleName() == "Stop the running job") button->click();
    waitUntilIdle(*window);
    CHECK(window->collection().sessions().size() == 1);

    measure(*window, photos);
    waitUntilIdle(*window);
    REQUIRE(window->collection().sessions().size() == 2);
    CHECK(window->findChild<MessageStrip*>()->text().contains("P1-b_rendered.jpg"));
    CHECK(part<QComboBox>(*window, "sessionCombo").currentText().contains("2031-02-03"));
    CHECK(part<QListView>(*window, "photoList").model()->rowCount() == 2);

    // A correction, taken back and made again.
    const double before = lengthOf(*window);
    moveTail(*window, 3);
    const double corrected = lengthOf(*window);
    CHECK(corrected != before);
    auto& undo = part<QAbstractButton>(*window, "undoButton");
    REQUIRE(undo.isEnabled());
    undo.click();
    CHECK(lengthOf(*window) == before);
    part<QAbstractButton>(*window, "redoButton").click();
    CHECK(lengthOf(*window) == corrected);

    // The window dies before anything is accepted: what was corrected is shown again.
    window = windowOn(folder);
    REQUIRE(window->collection().sessions().size() == 2);
    CHECK(window->findChild<MessageStrip*>()->text().contains("not accepted"));
    CHECK(window->findChild<SessionPage*>()->findChild<QLabel*>("stateLabel")->text().contains(QStringLiteral("✎")));
    // The mark is put back on the same pixel; the midline is then read anew through it.
    CHECK_THAT(lengthOf(*window), Catch::WithinAbs(corrected, 0.02));
    CHECK(part<QAbstractButton>(*window, "undoButton").isEnabled());
    auto& accept = part<QAbstractButton>(*window, "acceptButton");
    REQUIRE(accept.isEnabled());
    accept.click();
    waitUntilIdle(*window);
    CHECK_FALSE((fs::exists(folder / "drafts") && !fs::is_empty(folder / "drafts")));
    const auto stored = window->collection().store().measuresOfSession(window->collection().sessions().front().id);
    REQUIRE(stored.size() == 2);
    CHECK(stored.front().accepted);
    CHECK(stored.front().keeper == "K2");
    CHECK_THAT(stored.front().measurement.standardLengthMm.value, Catch::WithinAbs(corrected, 0.02));

    // P3 was not photographed: it is decided on, and the decision can be taken back.
    window->showPage(3);
    waitUntilIdle(*window);
    auto& list = part<QListView>(*window, "findingList");
    int row = -1;
    for (int k = 0; k < list.model()->rowCount(); ++k)
        if (row < 0 && list.model()->index(k, 0).data().toString() == "P3") row = k;
    REQUIRE(row >= 0);
    list.setCurrentIndex(list.model()->index(row, 0));
    waitUntilIdle(*window);
    const auto* sentence = window->findChild<FindingsPage*>()->findChild<QLabel*>("sentenceLabel");
    CHECK(sentence->text().contains("not photographed with its tankmates"));
    auto& keep = part<QAbstractButton>(*window, "keepButton");
    CHECK_FALSE(keep.isEnabled());
    auto& decision = part<QComboBox>(*window, "decisionCombo");
    decision.setCurrentIndex(decision.findData("dismissed"));
    CHECK_FALSE(keep.isEnabled());  // a reason is needed
    decision.setCurrentIndex(decision.findData("measure-again"));
    // What is typed outlives the window.
    QTest::keyClicks(&part<QLineEdit>(*window, "noteEdit"), "forgotten in the net");
    CHECK(QTest::qWaitFor([&] { return fs::exists(folder / "drafts" / "notes.json"); }, 3000));
    part<QAbstractButton>(*window, "followCheck").setChecked(true);
    REQUIRE(keep.isEnabled());
    keep.click();
    CHECK_FALSE(fs::exists(folder / "drafts" / "notes.json"));
    auto decisions = window->collection().store().decisions();
    REQUIRE(decisions.size() == 1);
    CHECK(decisions[0].decision == "measure-again");
    CHECK(decisions[0].note == "forgotten in the net");
    CHECK(decisions[0].keeper == "K2");
    CHECK(decisions[0].followUpOn.has_value());
    CHECK(decisions[0].findingText.find("not photographed") != std::string::npos);
    CHECK(list.model()->index(row, 0).data(Qt::AccessibleTextRole).toString().contains("Measure again"));
    CHECK(part<QLabel>(*window, "earlierLabel").text().contains("no session since"));
    part<QAbstractButton>(*window, "takeBackButton").click();
    CHECK(window->collection().store().decisions().empty());
    CHECK_FALSE(part<QAbstractButton>(*window, "takeBackButton").isVisible());
}

TEST_CASE("an animal's photos of two months stand at one scale") {
    const QTemporaryDir place;
    auto window = windowOn(smallCollection());
    measure(*window, nextMonth(place));
    waitUntilIdle(*window);
    const auto& animals = window->collection().animals();
    const auto photos = sidePhotosOf(window->collection().store(), animals.front().id);
    REQUIRE(photos.size() == 2);
    CHECK(photos[0].on < photos[1].on);
    PhotoStrip strip;
    strip.resize(700, 300);
    strip.setPhotos(photos);
    REQUIRE(QTest::qWaitFor([&] { return !strip.busy(); }, 20000));
    // A millimetre is as long in both: the cut-outs' widths are the outlines' in millimetres, with 6 % of room each
    // side.
    for (std::size_t k = 0; k < photos.size(); ++k) {
        double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
        for (const PixelPoint& p : photos[k].outlinePx) {
            left = std::min(left, p.x);
            right = std::max(right, p.x);
            top = std::min(top, p.y);
            bottom = std::max(bottom, p.y);
        }
        const double wide = right - left + 0.12 * std::max(right - left, bottom - top);
        CHECK_THAT(strip.placeOf(k).width(), Catch::WithinRel(wide * photos[k].mmPerPx * strip.unitsPerMm(), 1e-9));
        // The animal is about as long across its outline as its midline says: it hangs nearly straight.
        CHECK_THAT((right - left) * photos[k].mmPerPx, Catch::WithinRel(photos[k].lengthMm.value, 0.1));
    }
}

TEST_CASE("codes are sorted as a person counts, and the nearest reading of a chart is told") {
    CHECK(naturalLess("A2", "A10"));
    CHECK_FALSE(naturalLess("A10", "A2"));
    CHECK(naturalLess("a2", "B1"));
    CHECK(naturalLess("A02", "A3"));
    CHECK(naturalLess("A02", "A2"));
    CHECK_FALSE(naturalLess("A2", "A2"));

    ChartWidget widget;
    widget.resize(600, 400);
    widget.setExplorable();
    Chart chart;
    chart.x = dateAxis("Date of session", 22286.0, 22500.0);  // 2031-01-07 is day 22286
    chart.y = numberAxis("Standard length (mm)", 80.0, 120.0);
    chart.series = {{"A2", {{22290.0, 90.0, 0.6}, {22400.0, 100.0, 0.6}}, 0, false}};
    widget.setChart(chart);
    (void)widget.grab();
    const QPointF at = widget.placeOf({0, 1});
    const auto reading = widget.readingAt(at + QPointF(5.0, -4.0));
    REQUIRE(reading.has_value());
    CHECK(reading->point == 1);
    CHECK(widget.wordsOf(*reading) == "A2, 2031-05-01: 100.0 ± 0.6");
    CHECK_FALSE(widget.readingAt(at + QPointF(40.0, 0.0)).has_value());
    widget.showTimes(22380.0, 22420.0);
    CHECK(widget.shown().x.low == 22380.0);
    widget.showTimes(22000.0, 23000.0);
    CHECK(widget.shown().x.high == chart.x.high);
}
