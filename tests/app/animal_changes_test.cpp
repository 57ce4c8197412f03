// SPDX-License-Identifier: GPL-3.0-or-later
// What a keeper changes of animals, by the page's own menus and forms, each of it taken back and made again.
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDateEdit>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTabWidget>
#include <QTableView>
#include <QTest>
#include <QTimer>
#include <QUndoGroup>
#include <catch2/catch.hpp>

#include "app/animal_events_model.h"
#include "app/animals_page.h"
#include "app/main_window.h"
#include "app/picture_run.h"
#include "app/record_dialog.h"
#include "app/session_page.h"
#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

/// The page on a collection of three animals, P1 chosen; P1 has a second session, copied from its first.
struct AnimalsDesk {
    Collection collection;
    std::unique_ptr<AnimalsPage> page;

    AnimalsDesk() {
        collection.open(smallCollection());
        addSecondSession();
        page = std::make_unique<AnimalsPage>(collection);
        page->resize(1100, 760);
        page->show();
        collection.setReview(reviewOf(collection.folder(), std::nullopt));
        page->select(of("P1"));
    }

    void addSecondSession() {
        const AnimalId p1 = of("P1");
        collection.change("a second session", [&](Store& store) {
            StoredMeasure again = store.measuresOfAnimal(p1).front();
            Session session = store.sessions().front();
            session.on += std::chrono::days(28);
            session.id = store.addSession(session);
            StoredPhoto photo;
            photo.session = session.id;
            const std::filesystem::path original =
                std::filesystem::path(RINGRULE_SOURCE_DIR) / "sample_images" / "2031-02-03" / "P1-a_rendered.jpg";
            photo.contentHash = loadPhoto(original).contentHash;
            photo.originalName = "P1-again.jpg";
            again.photo = store.addPhoto(photo, original);
            again.replaces.reset();
            again.accepted = true;
            (void)store.addMeasure(again);
        });
        collection.reload();
    }

    [[nodiscard]] AnimalId of(const std::string& code) const {
        for (const Animal& animal : collection.animals())
            if (animal.code == code) return animal.id;
        return {};
    }
    [[nodiscard]] std::string tankOf(AnimalId animal) const {
        for (const Stay& stay : collection.store().stays())
            if (stay.animal == animal && !stay.to) return collection.tank(stay.tank)->code;
        return {};
    }
    template <class Widget>
    [[nodiscard]] Widget& part(const char* name) const {
        auto* found = page->findChild<Widget*>(QString::fromUtf8(name));
        REQUIRE(found != nullptr);
        return *found;
    }
    /// Chooses an entry of a button's menu and fills in the form that opens.
    void choose(const char* button, int entry, const std::function<void(RecordDialog&)>& fill) const {
        bool filled = false;
        QTimer::singleShot(0, page.get(), [&] {
            auto* form = qobject_cast<RecordDialog*>(QApplication::activeModalWidget());
            if (form == nullptr) return;
            filled = true;
            fill(*form);
            if (form->isVisible()) form->reject();
        });
        part<QPushButton>(button).menu()->actions().at(entry)->trigger();
        CHECK(filled);
    }
    void undo() { collection.undoStack().undo(); }
    void redo() { collection.undoStack().redo(); }
};

void type(RecordDialog& form, const char* field, const QString& text) {
    if (auto* combo = form.findChild<QComboBox*>(field)) {
        const int known = combo->findData(text);
        if (known >= 0) combo->setCurrentIndex(known);
        if (known < 0 && combo->isEditable()) combo->setEditText(text);
    } else if (auto* day = form.findChild<QDateEdit*>(field)) {
        day->setDate(QDate::fromString(text, Qt::ISODate));
    } else {
        form.findChild<QLineEdit*>(field)->setText(text);
    }
}

enum Change { Facts, Move, Separator, Merge, Split };

}  // namespace

TEST_CASE("an animal is moved to a new tank; undo brings it back and redo moves it again") {
    AnimalsDesk desk;
    const AnimalId p1 = desk.of("P1");
    desk.choose("changeButton", Move, [](RecordDialog& form) {
        type(form, "tank", "bay-9");
        type(form, "on_day", "2031-02-10");
        form.accept();
    });
    CHECK(desk.tankOf(p1) == "bay-9");
    const auto stays = desk.collection.store().stays();
    CHECK(stays.front().to == stays.back().from);  // the day of the move is in both
    desk.undo();
    CHECK(desk.tankOf(p1) == "bay-3");
    CHECK(desk.collection.tanks().size() == 1);
    desk.redo();
    CHECK(desk.tankOf(p1) == "bay-9");
}

TEST_CASE("a move to before the animal came is refused in the form, and nothing is changed") {
    AnimalsDesk desk;
    desk.choose("changeButton", Move, [](RecordDialog& form) {
        type(form, "tank", "bay-9");
        type(form, "on_day", "2030-12-01");
        form.accept();
        CHECK(form.isVisible());
        bool told = false;
        for (const QLabel* label : form.findChildren<QLabel*>()) told = told || label->text().contains("2031-01-01");
        CHECK(told);
    });
    CHECK(desk.tankOf(desk.of("P1")) == "bay-3");
    CHECK(desk.collection.tanks().size() == 1);
}

TEST_CASE("two codes of one animal are made one, with all readings, and parted again by undo") {
    AnimalsDesk desk;
    const AnimalId p1 = desk.of("P1"), p2 = desk.of("P2");
    desk.page->select(p2);
    desk.choose("changeButton", Merge, [](RecordDialog& form) {
        type(form, "animal", "P1");
        form.accept();
    });
    CHECK(desk.collection.animals().size() == 2);
    CHECK(desk.collection.store().measuresOfAnimal(p1).size() == 3);
    // Both were in bay-3 at the same time: one stay is left.
    int stays = 0;
    for (const Stay& stay : desk.collection.store().stays()) stays += stay.animal == p1 ? 1 : 0;
    CHECK(stays == 1);
    desk.undo();
    CHECK(desk.collection.animals().size() == 3);
    CHECK(desk.collection.store().measuresOfAnimal(p1).size() == 2);
    CHECK(desk.collection.store().measuresOfAnimal(desk.of("P2")).size() == 1);
    CHECK(desk.tankOf(desk.of("P2")) == "bay-3");
}

TEST_CASE(
    "later sessions are given to a new animal in the same tank; a day without sessions on both sides is refused") {
    AnimalsDesk desk;
    const AnimalId p1 = desk.of("P1");
    desk.choose("changeButton", Split, [](RecordDialog& form) {
        type(form, "code", "P8");
        type(form, "on_day", "2031-01-01");
        form.accept();
        CHECK(form.isVisible());
    });
    CHECK(desk.collection.animals().size() == 3);
    desk.choose("changeButton", Split, [](RecordDialog& form) {
        type(form, "code", "P8");
        type(form, "on_day", "2031-02-01");
        form.accept();
    });
    const AnimalId p8 = desk.of("P8");
    REQUIRE(p8.value != 0);
    CHECK(desk.collection.store().measuresOfAnimal(p1).size() == 1);
    CHECK(desk.collection.store().measuresOfAnimal(p8).size() == 1);
    CHECK(desk.tankOf(p8) == "bay-3");
    CHECK(desk.collection.animal(p8)->species == "Syngnathus typhle");
    CHECK_FALSE(desk.collection.animal(p8)->card.has_value());
    desk.undo();
    CHECK(desk.of("P8").value == 0);
    CHECK(desk.collection.store().measuresOfAnimal(p1).size() == 2);
}

TEST_CASE("what is known of an animal is changed on its page") {
    AnimalsDesk desk;
    desk.choose("changeButton", Facts, [](RecordDialog& form) {
        CHECK(form.findChild<QLineEdit*>("code")->text() == "P1");
        type(form, "name", "Wisp");
        type(form, "sex", "female");
        form.accept();
    });
    CHECK(desk.collection.animal(desk.of("P1"))->name == "Wisp");
    CHECK(desk.collection.animal(desk.of("P1"))->sex == Sex::Female);
    CHECK(desk.part<QLabel>("factsLabel").text().contains("Wisp"));
    desk.undo();
    CHECK(desk.collection.animal(desk.of("P1"))->name.empty());
}

TEST_CASE("a note and a feed stand among the animal's events, are changed and taken out, and come back") {
    AnimalsDesk desk;
    desk.choose("noteButton", 0, [](RecordDialog& form) {
        form.accept();  // a note without text is not kept
        CHECK(form.isVisible());
        type(form, "on_day", "2031-03-01");
        type(form, "text", "hides behind the pump");
        form.accept();
    });
    desk.choose("noteButton", 1, [](RecordDialog& form) {
        type(form, "on_day", "2031-03-02");
        type(form, "food", "live brine shrimp");
        type(form, "outcome", "refused");
        form.accept();
    });
    auto& table = desk.part<QTableView>("eventTable");
    CHECK(desk.part<QTabWidget>("historyTabs").currentWidget()->objectName() == "eventsTab");
    const auto cell = [&](int row) { return table.model()->index(row, AnimalEventsModel::What).data().toString(); };
    REQUIRE(table.model()->rowCount() == 3);  // and its tank
    CHECK(cell(0).contains("live brine shrimp"));
    CHECK(cell(1) == "hides behind the pump");
    table.selectRow(1);
    desk.part<QPushButton>("removeEventButton").click();
    CHECK(table.model()->rowCount() == 2);
    desk.undo();
    CHECK(table.model()->rowCount() == 3);
}

TEST_CASE("the list is narrowed to a tank, to those that need a look, and by what is typed") {
    AnimalsDesk desk;
    auto& table = desk.part<QTableView>("animalTable");
    CHECK(table.model()->rowCount() == 3);
    desk.part<QLineEdit>("filterEdit").setText("P2");
    CHECK(table.model()->rowCount() == 1);
    desk.part<QLineEdit>("filterEdit").clear();
    auto& tanks = desk.part<QComboBox>("tankCombo");
    CHECK(tanks.findText("bay-3") == 1);
    tanks.setCurrentIndex(1);
    CHECK(table.model()->rowCount() == 3);
    Review review = desk.collection.review();
    Finding thin;
    thin.kind = FindingKind::Thin;
    thin.animal = desk.of("P3");
    thin.on = review.days.back();
    review.findings = {thin};
    desk.collection.setReview(review);
    desk.part<QAbstractButton>("lookCheck").click();
    CHECK(table.model()->rowCount() == 1);
}

TEST_CASE("the events model keeps Qt's rules") {
    AnimalsDesk desk;
    AnimalEventsModel model(desk.collection);
    const QAbstractItemModelTester tested(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(desk.of("P1"));
    CHECK(model.rowCount() == 1);
    for (int column = 0; column < model.columnCount(); ++column)
        for (int role = 0; role < Qt::UserRole + 3; ++role) (void)model.data(model.index(0, column), role);
    model.show(std::nullopt);
    CHECK(model.rowCount() == 0);
}

TEST_CASE("small pictures of the animals are read while the list is shown") {
    AnimalsDesk desk;
    (void)desk.page->grab();
    CHECK(QTest::qWaitFor([&] { return !desk.page->busy(); }, 20000));
    Store store = Store::open(desk.collection.folder());
    store.setAccepted(store.measuresOfAnimal(desk.of("P2")).front().id, false);
    CHECK(smallPictureOf(store, desk.of("P2"), 168).isNull());  // nothing of P2 counts any more
    const QImage other = smallPictureOf(desk.collection.store(), desk.of("P1"), 168);
    CHECK(other.width() > 60);
    CHECK(other.width() <= 168);
}

TEST_CASE("an acceptance is taken back by the window's undo, and the photo waits to be looked at again") {
    MainWindow window{Settings{}};
    window.resize(1280, 800);
    window.show();
    const auto folder = smallCollection();
    {
        Store store = Store::open(folder);
        for (const StoredMeasure& measure : store.measuresOfSession(store.sessions().front().id))
            store.setAccepted(measure.id, false);
    }
    window.openCollection(folder);
    waitUntilIdle(window);
    const auto accepted = [&] {
        int count = 0;
        for (const auto& measure :
             window.collection().store().measuresOfSession(window.collection().sessions().front().id))
            count += measure.accepted ? 1 : 0;
        return count;
    };
    REQUIRE(accepted() == 0);
    auto& page = *window.findChild<SessionPage*>();
    page.accept();
    waitUntilIdle(window);
    CHECK(accepted() == 1);
    REQUIRE(page.undoGroup().canUndo());
    page.undoGroup().undo();
    waitUntilIdle(window);
    CHECK(accepted() == 0);
    CHECK(page.photos().countOf(PhotoState::Measured) == 3);
    page.undoGroup().redo();
    waitUntilIdle(window);
    CHECK(accepted() == 1);
}
