// SPDX-License-Identifier: GPL-3.0-or-later
// Correcting a photo: by mouse on the real view, by keyboard, undone, redone and stored.
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <catch2/catch.hpp>

#include "ringrule/sheets/landmark_mark.h"
#include "session_desk.h"

using namespace ringrule;

namespace {

bool samePlaces(const Landmarks& a, const Landmarks& b) {
    for (const LandmarkName name : kLandmarkNames) {
        const auto& x = landmarkOf(a, name);
        const auto& y = landmarkOf(b, name);
        if (x.has_value() != y.has_value()) return false;
        if (x && (!(x->atPx == y->atPx) || x->movedByHand != y->movedByHand || x->sdAlongPx != y->sdAlongPx))
            return false;
    }
    return true;
}

bool same(const AnimalReading& a, const AnimalReading& b) {
    return samePlaces(a.anatomy.landmarks, b.anatomy.landmarks) &&
           a.anatomy.midline.spinePx == b.anatomy.midline.spinePx && a.outline.boundaryPx == b.outline.boundaryPx &&
           a.measurement.standardLengthMm.value == b.measurement.standardLengthMm.value &&
           a.measurement.standardLengthMm.sdRandom == b.measurement.standardLengthMm.sdRandom &&
           a.measurement.headLengthMm.value == b.measurement.headLengthMm.value &&
           a.measurement.remarks == b.measurement.remarks;
}

}  // namespace

TEST_CASE("one drag of a landmark makes one undo entry, and undo restores equality") {
    const SessionDesk desk;
    const AnimalReading before = desk.animal();
    desk.dragLandmark(LandmarkName::HeadEnd, {30, 0});
    QUndoStack& undo = desk.page->draft()->undoStack();
    REQUIRE(undo.count() == 1);
    CHECK(undo.text(0) == "move of head end");
    const AnimalReading after = desk.animal();
    CHECK_FALSE(same(before, after));
    CHECK(after.anatomy.landmarks.headEnd->movedByHand);
    CHECK(after.measurement.headLengthMm.value != before.measurement.headLengthMm.value);
    CHECK(desk.page->draft()->changed(0));
    undo.undo();
    CHECK(same(desk.animal(), before));
    CHECK_FALSE(desk.page->draft()->changed(0));
    undo.redo();
    CHECK(same(desk.animal(), after));
    desk.dragLandmark(LandmarkName::TailEnd, {-25, 4});
    CHECK(undo.count() == 2);
    undo.undo();
    CHECK(same(desk.animal(), after));
}

TEST_CASE("pressing on a landmark without moving it changes nothing") {
    const SessionDesk desk;
    desk.dragLandmark(LandmarkName::HeadEnd, {0, 0});
    CHECK(desk.page->draft()->undoStack().count() == 0);
}

TEST_CASE("the keyboard alone moves a landmark; steps that follow each other are one entry") {
    const SessionDesk desk;
    const AnimalReading before = desk.animal();
    desk.view().setFocus();
    QTest::keyClick(&desk.view(), Qt::Key_Tab);
    const auto focused = [&] { return dynamic_cast<LandmarkItem*>(desk.view().scene()->focusItem()); };
    REQUIRE(focused() != nullptr);
    CHECK(focused()->landmark() == LandmarkName::SnoutTip);
    for (int k = 0; k < 3; ++k) {
        QTest::keyClick(desk.view().viewport(), Qt::Key_Left);
        QApplication::processEvents();
    }
    QUndoStack& undo = desk.page->draft()->undoStack();
    CHECK(undo.count() == 1);
    CHECK_THAT(desk.animal().anatomy.landmarks.snoutTip->atPx.x,
               Catch::WithinAbs(before.anatomy.landmarks.snoutTip->atPx.x - 3.0, 1e-9));
    REQUIRE(focused() != nullptr);
    undo.undo();
    CHECK(same(desk.animal(), before));
}

TEST_CASE("an accepted correction is stored beside the measure it replaces, and read back as corrected") {
    SessionDesk desk;
    const StoredMeasure old = desk.page->photos().row(0).measures.front();
    desk.dragLandmark(LandmarkName::HeadEnd, {24, 0});
    const AnimalReading corrected = desk.animal();
    const StoredPhoto photo = desk.page->photos().row(0).photo;
    QSignalSpy changed(&desk.collection, &Collection::measuresChanged);
    desk.page->accept();
    CHECK(changed.count() == 1);
    const std::vector<StoredMeasure> current = desk.collection.store().measuresOfPhoto(photo.id);
    REQUIRE(current.size() == 1);
    CHECK(current.front().replaces == old.id);
    CHECK(current.front().accepted);
    CHECK(current.front().keeper == "K1");
    CHECK(samePlaces(current.front().landmarks, corrected.anatomy.landmarks));
    CHECK_THAT(current.front().measurement.headLengthMm.value,
               Catch::WithinAbs(corrected.measurement.headLengthMm.value, 1e-9));
    CHECK(desk.page->photos().row(0).state == PhotoState::Corrected);

    // Opened afresh, the photo shows the landmark where the keeper put it.
    SessionPage again(desk.collection);
    again.showRow(0);
    REQUIRE(QTest::qWaitFor([&] { return !again.busy() && again.draft() != nullptr; }, 20000));
    const Landmarks& shown = again.draft()->reading().animals.front().anatomy.landmarks;
    CHECK(shown.headEnd->movedByHand);
    CHECK_THAT(distance(shown.headEnd->atPx, corrected.anatomy.landmarks.headEnd->atPx), Catch::WithinAbs(0.0, 0.5));
}

TEST_CASE("a move that is not accepted is not stored, and waits while other photos are looked at") {
    SessionDesk desk;
    desk.dragLandmark(LandmarkName::HeadEnd, {24, 0});
    const AnimalReading moved = desk.animal();
    desk.page->next();
    REQUIRE(desk.waitForDraft());
    CHECK(desk.page->draft()->undoStack().count() == 0);
    desk.page->previous();
    REQUIRE(desk.waitForDraft());
    CHECK(same(desk.animal(), moved));
    CHECK(desk.page->draft()->undoStack().count() == 1);
    CHECK_FALSE(desk.collection.store().measuresOfPhoto(desk.page->photos().row(0).photo.id).front().replaces);
}
