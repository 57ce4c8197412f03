// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/main_window.h"

#include <QAbstractButton>
#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMenuBar>
#include <QStackedWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>
#include <set>

#include "app/chart_widget.h"
#include "app/message_strip.h"
#include "app/picture_run.h"
#include "app/session_page.h"
#include "ringrule/workflow/collection_review.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

template <class Widget>
Widget& part(const MainWindow& window, const char* name) {
    auto* found = window.findChild<Widget*>(QString::fromUtf8(name));
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace

TEST_CASE("without a collection the window says what to do") {
    MainWindow window{Settings{}};
    window.show();
    CHECK(part<QAbstractButton>(window, "openButton").isVisible());
    CHECK(part<QAbstractButton>(window, "createButton").isVisible());
    CHECK(part<QAbstractButton>(window, "demoButton").isVisible());
    CHECK_FALSE(part<QListWidget>(window, "pageList").isVisible());
}

TEST_CASE("a folder that is no collection is told in the message strip, and nothing else changes") {
    MainWindow window{Settings{}};
    window.show();
    window.openCollection("/nonexistent/collection");
    const auto& strip = *window.findChild<MessageStrip*>();
    CHECK(strip.isVisible());
    CHECK(strip.text().contains("/nonexistent/collection"));
    CHECK_FALSE(window.collection().isOpen());
    CHECK(window.settings().recentCollections.isEmpty());
}

TEST_CASE("the pages show what the collection has") {
    MainWindow window{Settings{}};
    window.show();
    window.openCollection(smallCollection());
    waitUntilIdle(window);
    CHECK(part<QListView>(window, "photoList").model()->rowCount() == 3);
    CHECK(part<QComboBox>(window, "sessionCombo").currentText().contains("2031-01-06"));
    CHECK(part<QTableView>(window, "measureTable").model()->rowCount() > 5);
    CHECK(part<QTableView>(window, "animalTable").model()->rowCount() == 3);
    CHECK(part<QTableView>(window, "historyTable").model()->rowCount() == 1);
    window.showPage(2);
    CHECK(part<QStackedWidget>(window, "pages").currentIndex() == 3);
    const auto& chart = *part<QWidget>(window, "GrowthPage").findChild<ChartWidget*>();
    CHECK(chart.chart().series.size() == 3);
    CHECK(chart.chart().x.title == "Age (days)");
    CHECK(part<QComboBox>(window, "dayCombo").currentText() == "2031-01-06");
    CHECK(window.settings().recentCollections.size() == 1);
}

TEST_CASE("accepting walks through the photos that are still to be looked at") {
    MainWindow window{Settings{}};
    window.show();
    const std::filesystem::path folder = smallCollection();
    {
        Store store = Store::open(folder);
        for (const StoredMeasure& measure : store.measuresOfSession(store.sessions().front().id))
            store.setAccepted(measure.id, false);
    }
    window.openCollection(folder);
    waitUntilIdle(window);
    auto& list = part<QListView>(window, "photoList");
    auto& accept = part<QAbstractButton>(window, "acceptButton");
    CHECK(list.currentIndex().row() == 0);
    for (int row = 0; row < 3; ++row) {
        CHECK(list.currentIndex().row() == row);
        REQUIRE(accept.isEnabled());
        accept.click();
        waitUntilIdle(window);
    }
    CHECK_FALSE(accept.isEnabled());
    for (const StoredMeasure& measure :
         window.collection().store().measuresOfSession(window.collection().sessions().front().id))
        CHECK(measure.accepted);
}

TEST_CASE("a session is measured into a new collection, and a stopped one leaves it as it was") {
    const QTemporaryDir place;
    MainWindow window{Settings{}};
    window.show();
    window.createCollection(std::filesystem::path(place.path().toStdString()) / "new");
    REQUIRE(window.collection().isOpen());
    const std::filesystem::path boxFile = std::filesystem::path(RINGRULE_SOURCE_DIR) / "calibration" / "bench-box.json";
    window.collection().keepBox(boxFile);
    REQUIRE(window.collection().boxes().size() == 1);
    Session session;
    session.on = *parseDate("2031-01-06");
    session.keeper = "K2";
    const Box box = window.collection().boxes().front();

    window.measureSession(photosOfSmallCollection(), session, box);
    CHECK(window.job().running());
    window.job().stop();
    waitUntilIdle(window);
    CHECK(window.collection().store().sessions().empty());

    window.measureSession(photosOfSmallCollection(), session, box);
    waitUntilIdle(window);
    CHECK(window.collection().sessions().size() == 1);
    CHECK(part<QListView>(window, "photoList").model()->rowCount() == 3);
    CHECK(window.findChild<MessageStrip*>()->isVisible());
}

TEST_CASE("the keyboard reaches everything: shortcuts are unique and every control has a name") {
    MainWindow window{Settings{}};
    std::set<QString> keys;
    for (const QAction* action : window.findChildren<QAction*>()) {
        if (action->shortcut().isEmpty()) continue;
        INFO(action->text().toStdString());
        CHECK(keys.insert(action->shortcut().toString()).second);
    }
    CHECK(keys.size() >= 12);
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || widget->objectName().startsWith("qt_")) continue;
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        const bool control = button != nullptr || qobject_cast<const QComboBox*>(widget) != nullptr ||
                             qobject_cast<const QLineEdit*>(widget) != nullptr ||
                             qobject_cast<const QAbstractItemView*>(widget) != nullptr;
        if (!control) continue;
        // Parts that Qt itself puts into its controls speak through them.
        if (qobject_cast<const QComboBox*>(widget->parent()) != nullptr || widget->inherits("QComboBoxListView") ||
            widget->inherits("QLineEditIconButton") || widget->inherits("QTableCornerButton"))
            continue;
        INFO(widget->metaObject()->className() << " " << widget->objectName().toStdString());
        CHECK((!widget->accessibleName().isEmpty() || (button != nullptr && !button->text().isEmpty())));
    }
}

TEST_CASE("a picture of every page can be saved") {
    const QTemporaryDir place;
    MainWindow window{Settings{}};
    window.show();
    window.openCollection(smallCollection());
    CHECK(savePictures(window, place.path().toStdString()));
    CHECK(QDir(place.path()).entryList({"*.png"}).size() == window.pageCount() + 6 + 3 + 5);  // steps of the box, other sides, forms
}

TEST_CASE("the number of findings stands at the page that shows them") {
    MainWindow window{Settings{}};
    window.show();
    window.openCollection(smallCollection());
    waitUntilIdle(window);
    Review review = window.collection().review();
    Finding finding;
    finding.kind = FindingKind::Stalled;
    finding.animal = window.collection().animals().front().id;
    finding.animalCode = "P1";
    finding.on = *review.asOf;
    Finding doubtful = finding;
    doubtful.kind = FindingKind::MeasureDoubtful;
    review.findings = {finding, doubtful};
    window.collection().setReview(review);
    const auto& pages = part<QListWidget>(window, "pageList");
    QStringList names;
    for (int row = 0; row < pages.count(); ++row) names << pages.item(row)->text();
    CHECK(names == QStringList{"Photo session", "Animals", "Growth", "Needs a look  (1)", "Diets", "Broods", "Box"});
    CHECK(part<QListView>(window, "findingList").model()->rowCount() == 2);
    CHECK(part<QLabel>(window, "kindLabel").text() == "P1: stalled");
}
