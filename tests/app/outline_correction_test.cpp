// SPDX-License-Identifier: GPL-3.0-or-later
// Correcting outlines on the photo: pulled, traced, cut, by mouse and by keyboard; what a keeper says of an animal.
#include <QAbstractItemModel>
#include <QCheckBox>
#include <QComboBox>
#include <QTableView>
#include <QTest>
#include <algorithm>
#include <catch2/catch.hpp>

#include "session_desk.h"

using namespace ringrule;

namespace {

bool has(const std::vector<Remark>& remarks, Remark remark) {
    return std::find(remarks.begin(), remarks.end(), remark) != remarks.end();
}

/// The point of the outline that lies lowest on the photo so far along from the middle of the body.
PixelPoint bellyOf(const AnimalReading& animal, double alongPx = 0.0) {
    const std::vector<PixelPoint>& spine = animal.anatomy.midline.spinePx;
    const double at = spine[spine.size() / 2].x + alongPx;
    PixelPoint lowest{0.0, -1.0};
    for (const PixelPoint& point : animal.outline.boundaryPx)
        if (std::abs(point.x - at) < 8.0 && point.y > lowest.y) lowest = point;
    return lowest;
}

QPoint viewOf(const SessionDesk& desk, PixelPoint at, QPointF byPx = {}) {
    return desk.view().mapFromScene(QPointF(at.x, at.y) + byPx);
}

QString cell(const SessionDesk& desk, int row) {
    const auto* table = desk.page->findChild<QTableView*>("measureTable");
    return table->model()->index(row, 1).data().toString();
}

}  // namespace

TEST_CASE("pulling the outline is one undo entry, measured again, and undo restores it") {
    const SessionDesk desk;
    const AnimalReading before = desk.animal();
    desk.page->chooseTool(SessionPage::Tool::Pull);
    const PixelPoint belly = bellyOf(before);
    desk.drag(viewOf(desk, belly), viewOf(desk, belly, {0, 14}));
    QUndoStack& undo = desk.page->draft()->undoStack();
    REQUIRE(undo.count() == 1);
    const AnimalReading after = desk.animal();
    CHECK(after.outline.areaPx2 > before.outline.areaPx2);
    CHECK(has(after.measurement.remarks, Remark::OutlinedByHand));
    CHECK(after.measurement.measured());
    CHECK(desk.page->draft()->changed(0));
    undo.undo();
    CHECK(desk.animal().outline.boundaryPx == before.outline.boundaryPx);
    CHECK(desk.animal().measurement.standardLengthMm.value == before.measurement.standardLengthMm.value);
    CHECK_FALSE(desk.page->draft()->changed(0));
}

TEST_CASE("a cut makes two animals, stored when accepted and there again when the photo is opened afresh") {
    SessionDesk desk;
    desk.page->chooseTool(SessionPage::Tool::Cut);
    const AnimalReading before = desk.animal();
    const PixelPoint belly = bellyOf(before);
    desk.drag(viewOf(desk, belly, {0, 60}), viewOf(desk, belly, {0, -160}));
    QUndoStack& undo = desk.page->draft()->undoStack();
    REQUIRE(undo.count() == 1);
    CHECK(desk.page->draft()->reading().animals.size() == 2);
    CHECK(desk.page->findChild<QComboBox*>("animalCombo")->count() == 2);
    undo.undo();
    REQUIRE(desk.page->draft()->reading().animals.size() == 1);
    CHECK(desk.animal().outline.boundaryPx == before.outline.boundaryPx);
    undo.redo();
    const StoredPhoto photo = desk.page->photos().row(0).photo;
    const std::size_t measured = static_cast<std::size_t>(
        std::count_if(desk.page->draft()->reading().animals.begin(), desk.page->draft()->reading().animals.end(),
                      [](const AnimalReading& a) { return a.measurement.measured(); }));
    REQUIRE(measured > 0);
    desk.page->accept();
    const std::vector<StoredMeasure> stored = desk.collection.store().measuresOfPhoto(photo.id);
    REQUIRE(stored.size() == 2);
    CHECK(std::count_if(stored.begin(), stored.end(), [](const StoredMeasure& m) { return m.replaces.has_value(); }) ==
          1);

    SessionPage again(desk.collection);
    again.showRow(0);
    REQUIRE(QTest::qWaitFor([&] { return !again.busy() && again.draft() != nullptr; }, 20000));
    CHECK(again.draft()->reading().animals.size() == 2);
}

TEST_CASE("a line that misses the animal cuts nothing and says why") {
    const SessionDesk desk;
    QString problem;
    QObject::connect(desk.page.get(), &SessionPage::problem, [&](const QString& sentence) { problem = sentence; });
    desk.page->chooseTool(SessionPage::Tool::Cut);
    const PixelPoint belly = bellyOf(desk.animal());
    desk.drag(viewOf(desk, belly, {-60, 40}), viewOf(desk, belly, {60, 40}));
    CHECK(desk.page->draft()->undoStack().count() == 0);
    CHECK_FALSE(problem.isEmpty());
}

TEST_CASE("tracing from one place of the outline to another replaces the stretch between") {
    const SessionDesk desk;
    const AnimalReading before = desk.animal();
    desk.page->chooseTool(SessionPage::Tool::Trace);
    QWidget* viewport = desk.view().viewport();
    for (const double along : {-120.0, 0.0, 120.0}) {
        const QPoint at = viewOf(desk, bellyOf(before, along));
        QTest::mouseMove(viewport, at);
        QTest::mouseClick(viewport, Qt::LeftButton, {}, at);
    }
    QTest::keyClick(&desk.view(), Qt::Key_Return);
    REQUIRE(desk.page->draft()->undoStack().count() == 1);
    const AnimalReading after = desk.animal();
    CHECK(has(after.measurement.remarks, Remark::OutlinedByHand));
    // The edge that was traced is the one that was found: the body stays as large as it was, to a few per cent.
    CHECK(std::abs(after.outline.areaPx2 / before.outline.areaPx2 - 1.0) < 0.05);
}

TEST_CASE("the keyboard alone cuts, and Esc gives up what was begun") {
    const SessionDesk desk;
    desk.page->chooseTool(SessionPage::Tool::Cut);
    const PixelPoint belly = bellyOf(desk.animal());
    desk.view().centerOn(QPointF(belly.x, belly.y + 30.0));
    desk.view().setFocus();
    QTest::keyClick(&desk.view(), Qt::Key_Space);
    QTest::keyClick(&desk.view(), Qt::Key_Up);
    QTest::keyClick(&desk.view(), Qt::Key_Escape);
    CHECK(desk.page->draft()->undoStack().count() == 0);
    QTest::keyClick(&desk.view(), Qt::Key_Down);
    QTest::keyClick(&desk.view(), Qt::Key_Space);
    for (int k = 0; k < 40; ++k) QTest::keyClick(&desk.view(), Qt::Key_Up);
    QTest::keyClick(&desk.view(), Qt::Key_Space);
    CHECK(desk.page->draft()->undoStack().count() == 1);
    CHECK(desk.page->draft()->reading().animals.size() == 2);
}

TEST_CASE("numbers follow a landmark while it is dragged, before anything is changed") {
    const SessionDesk desk;
    desk.page->chooseTool(SessionPage::Tool::Marks);
    const QString length = cell(desk, 0);
    QWidget* viewport = desk.view().viewport();
    const QPoint from = desk.view().mapFromScene(desk.view().landmarkItem(LandmarkName::TailEnd)->pos());
    QTest::mousePress(viewport, Qt::LeftButton, {}, from);
    for (int step = 1; step <= 3; ++step) desk.dragTo(from + QPoint(12 * step, 0));
    CHECK(cell(desk, 0) != length);
    CHECK(desk.page->draft()->undoStack().count() == 0);
    QTest::mouseRelease(viewport, Qt::LeftButton, {}, from + QPoint(36, 0));
    QApplication::processEvents();
    CHECK(desk.page->draft()->undoStack().count() == 1);
}

TEST_CASE("a tail said to be closed takes the length away, and undo gives it back") {
    const SessionDesk desk;
    auto* tail = desk.page->findChild<QCheckBox*>("tailCheck");
    REQUIRE(tail->isEnabled());
    tail->click();
    CHECK_FALSE(desk.animal().measurement.standardLengthMm.known());
    CHECK(desk.animal().measurement.refusal->reason == "tail-closed");
    CHECK(cell(desk, 0) == "cannot tell");
    desk.page->draft()->undoStack().undo();
    CHECK(desk.animal().measurement.standardLengthMm.known());
    CHECK_FALSE(tail->isChecked());
}

TEST_CASE("an animal said to be brooding is on record for the day once it is accepted") {
    SessionDesk desk;
    desk.page->findChild<QCheckBox*>("broodingCheck")->click();
    CHECK(has(desk.animal().measurement.remarks, Remark::NotOnGirth));
    CHECK(desk.collection.store().states().empty());
    desk.page->accept();
    const std::vector<StateSpell> states = desk.collection.store().states();
    REQUIRE(states.size() == 1);
    CHECK(states.front().state == "brooding");
    CHECK(formatDate(states.front().from) == "2031-01-06");
    CHECK(states.front().to == states.front().from);
}
