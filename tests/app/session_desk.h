// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QApplication>
#include <QMouseEvent>
#include <QTest>
#include <catch2/catch.hpp>
#include <memory>

#include "app/landmark_item.h"
#include "app/photo_view.h"
#include "app/session_page.h"
#include "small_collection.h"

namespace ringrule {

/// A session page on its first photo, read and ready to be corrected.
struct SessionDesk {
    Collection collection;
    std::unique_ptr<SessionPage> page;

    SessionDesk() {
        collection.open(smallCollection());
        page = std::make_unique<SessionPage>(collection);
        page->resize(1300, 800);
        page->show();
        REQUIRE(waitForDraft());
    }
    [[nodiscard]] bool waitForDraft() const {
        return QTest::qWaitFor([this] { return !page->busy() && page->draft() != nullptr; }, 20000);
    }
    [[nodiscard]] PhotoView& view() const { return *page->findChild<PhotoView*>("photoView"); }
    [[nodiscard]] const AnimalReading& animal() const { return page->draft()->reading().animals.front(); }

    /// Moves the pressed mouse.
    void dragTo(QPoint to) const {
        QWidget* viewport = view().viewport();
        QMouseEvent move(QEvent::MouseMove, QPointF(to), viewport->mapToGlobal(QPointF(to)), Qt::LeftButton,
                         Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(viewport, &move);
    }
    /// Presses, moves in several steps, lets go; in pixels of the view.
    void drag(QPoint from, QPoint to) const {
        QWidget* viewport = view().viewport();
        QTest::mousePress(viewport, Qt::LeftButton, {}, from);
        for (int step = 1; step <= 4; ++step) dragTo(from + (to - from) * step / 4);
        QTest::mouseRelease(viewport, Qt::LeftButton, {}, to);
        QApplication::processEvents();
    }
    void dragLandmark(LandmarkName name, QPoint by) const {
        const QPoint from = view().mapFromScene(view().landmarkItem(name)->pos());
        drag(from, from + by);
    }
};

}  // namespace ringrule
