// SPDX-License-Identifier: GPL-3.0-or-later
// A new box set up from an empty collection by the page's own buttons, with lens photos that are too few at first and a
// printer's error that only the rod shows. The rod is seen by the photographer of tests/render, through the lens of
// OpenCV's chessboard photos, before a plate printed at 97 %.
#include <QApplication>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QRegularExpression>
#include <QSpinBox>
#include <QStackedWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <catch2/catch.hpp>

#include "app/box_page.h"
#include "app/new_box_dialog.h"
#include "box_file.h"
#include "rod_photo.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

constexpr double kPrinted = 0.97;

/// Runs once the program asks for something in a dialog of that kind.
template <class Dialog, class Answer>
void whenAsked(Answer answer) {
    auto* look = new QTimer(qApp);
    QObject::connect(look, &QTimer::timeout, look, [look, answer] {
        auto* dialog = qobject_cast<Dialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) return;
        look->stop();
        look->deleteLater();
        answer(*dialog);
    });
    look->start(10);
}

/// Types the names into the next file dialog.
void typeFileNames(const QStringList& paths) {
    whenAsked<QFileDialog>([paths](QFileDialog& dialog) {
        dialog.findChild<QLineEdit*>(QStringLiteral("fileNameEdit"))
            ->setText(paths.size() == 1 ? paths.first() : '"' + paths.join(QStringLiteral("\" \"")) + '"');
        QMetaObject::invokeMethod(&dialog, "accept");
    });
}

QStringList chessboardPhotos() {
    QStringList photos;
    const std::filesystem::path folder = std::filesystem::path(RINGRULE_SOURCE_DIR) / "tests/outside/data/chessboard";
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        if (entry.path().extension() == ".jpg") photos << QString::fromStdString(entry.path().string());
    photos.sort();
    return photos;
}

/// The page of an empty collection, and a keeper's hands.
class Walk {
public:
    Walk() {
        collection_.create(place_.filePath(QStringLiteral("house")).toStdString());
        page_ = std::make_unique<BoxPage>(collection_, job_);
        page_->resize(1060, 760);
        page_->show();
        QObject::connect(page_.get(), &BoxPage::problem, [this](const QString& sentence) { problems_ << sentence; });
    }
    template <class Widget>
    Widget& part(const char* name) const {
        auto* stack = page_->findChild<QStackedWidget*>(QStringLiteral("panels"));
        auto* found = stack->currentWidget()->findChild<Widget*>(QString::fromUtf8(name));
        if (found == nullptr) found = page_->findChild<Widget*>(QString::fromUtf8(name));
        REQUIRE(found != nullptr);
        return *found;
    }
    void click(const char* button) const {
        REQUIRE(part<QPushButton>(button).isVisible());
        REQUIRE(part<QPushButton>(button).isEnabled());
        QTest::mouseClick(&part<QPushButton>(button), Qt::LeftButton);
    }
    void type(const char* spin, double value) const { part<QDoubleSpinBox>(spin).setValue(value); }
    void waitForJob() {
        REQUIRE(job_.running());
        REQUIRE(QTest::qWaitFor([this] { return !job_.running(); }, 60000));
    }
    [[nodiscard]] QString said(const char* label) const { return part<QLabel>(label).text(); }
    [[nodiscard]] int done() const {
        const auto& steps = page_->current().steps();
        return static_cast<int>(std::count_if(steps.begin(), steps.end(),
                                              [](const SetupStep& step) { return step.state == SetupState::Done; }));
    }
    [[nodiscard]] CurrentBox& box() const { return page_->current(); }
    [[nodiscard]] BoxPage& page() const { return *page_; }
    [[nodiscard]] const QStringList& problems() const { return problems_; }
    [[nodiscard]] QString file(const char* name) const { return place_.filePath(QString::fromUtf8(name)); }

private:
    QTemporaryDir place_;
    Collection collection_;
    JobRunner job_;
    std::unique_ptr<BoxPage> page_;
    QStringList problems_;
};

void makeBox(const Walk& walk) {
    REQUIRE(walk.part<QStackedWidget>("sides").currentWidget()->objectName() == "emptySide");
    whenAsked<NewBoxDialog>([&walk](NewBoxDialog& dialog) {
        dialog.findChild<QLineEdit*>(QStringLiteral("nameEdit"))->setText(QStringLiteral("Bay 3"));
        typeFileNames({walk.file("plate.pdf")});
        dialog.findChild<QDialogButtonBox*>(QStringLiteral("buttons"))->button(QDialogButtonBox::Save)->click();
    });
    walk.click("firstBoxButton");
    REQUIRE(walk.box().index() == 0);
    CHECK(QFileInfo(walk.file("plate.pdf")).size() > 1000);
}

void measureBars(const Walk& walk, double acrossReads, double downReads) {
    walk.type("acrossStatedSpin", 200.0);
    walk.type("acrossReadSpin", acrossReads);
    walk.type("downStatedSpin", 150.0);
    walk.type("downReadSpin", downReads);
    walk.click("correctButton");
}

void takeLensPhotos(Walk& walk, const QStringList& photos) {
    walk.part<QComboBox>("boardCombo").setCurrentIndex(1);
    walk.part<QSpinBox>("columnsSpin").setValue(9);
    walk.part<QSpinBox>("rowsSpin").setValue(6);
    walk.type("squareSpin", 25.0);
    typeFileNames(photos);
    walk.click("photosButton");
    walk.waitForJob();
}

void checkWithRod(Walk& walk, const QString& photo) {
    walk.part<QComboBox>("kindCombo").setCurrentIndex(2);
    walk.type("rodSpin", 100.0);
    typeFileNames({photo});
    walk.click("photoButton");
    walk.waitForJob();
}

/// A strip of 100 mm where the animals hang, before the plate as the printer made it.
void photographRodOf(const Walk& walk, const QString& photo) {
    render::RodScene scene;
    scene.box = render::readBox(walk.box().file());
    scene.printScale = kPrinted;
    scene.fromMm = {47.0, 57.0};
    scene.toMm = {147.0, 57.0};
    scene.widthMm = 6.0;
    scene.camera.aimMm = {97.0, 58.0};
    render::photographRod(scene, photo.toStdString());
}

}  // namespace

TEST_CASE("a keeper sets a box up step by step, and what the rod shows wrong is mended") {
    Walk walk;
    makeBox(walk);
    CHECK(walk.said("stepLabel") == "Steel rule");
    CHECK(walk.said("adviceLabel").contains("97 %"));
    measureBars(walk, 200.0, 150.0);  // typed without looking
    CHECK(walk.said("stateLabel").contains("Done"));

    walk.click("onButton");
    CHECK(walk.said("stepLabel") == "Lens photos");
    takeLensPhotos(walk, chessboardPhotos().mid(0, 3));
    CHECK(walk.said("resultLabel").contains("at least 5 are needed"));
    CHECK_FALSE(walk.part<QPushButton>("useButton").isEnabled());
    CHECK(walk.said("stateLabel").contains("To do"));
    takeLensPhotos(walk, chessboardPhotos());
    CHECK(walk.said("resultLabel").contains("533"));  // px, as tests/outside has it
    walk.click("useButton");
    CHECK(walk.said("stateLabel").contains("Done"));
    CHECK(walk.said("foundLabel").contains("533 px"));
    CHECK(walk.said("foundLabel").contains("neither camera nor day"));  // the photos have no EXIF

    walk.click("onButton");
    CHECK(walk.said("stepLabel") == "Water and window");
    walk.part<QComboBox>("windowCombo").setCurrentIndex(0);
    walk.type("thicknessSpin", 5.0);
    walk.type("cameraSpin", 135.0);
    walk.type("depthSpin", 60.0);
    walk.click("saveButton");
    CHECK(walk.said("stateLabel").contains("Done"));

    walk.click("onButton");
    CHECK(walk.said("stepLabel") == "Animal's plane");
    walk.type("distanceSpin", 8.0);
    walk.type("toleranceSpin", 2.0);
    walk.click("saveButton");
    CHECK(walk.said("stateLabel").contains("Done"));
    CHECK(walk.done() == 5);

    walk.click("onButton");
    CHECK(walk.said("stepLabel") == "Rod check");
    CHECK_FALSE(walk.part<QPushButton>("onButton").isEnabled());
    const QString photo = walk.file("rod.jpg");
    photographRodOf(walk, photo);
    checkWithRod(walk, photo);
    CHECK(walk.said("resultLabel").startsWith(QStringLiteral("▼")));
    CHECK(walk.said("stateLabel").contains("Wrong"));
    const auto print = QRegularExpression("printed at ([0-9.]+) %").match(walk.said("adviceLabel"));
    REQUIRE(print.hasMatch());
    // The strip reads to 0.1 mm; the fitted distance takes a little of the print's error.
    CHECK_THAT(print.captured(1).toDouble(), Catch::WithinAbs(97.0, 0.3));
    CHECK_FALSE(walk.said("adviceLabel").contains("ringrule"));
    // The plate looks too far away as well, by as much: told at the water, and again at the rod.
    CHECK_THAT(walk.said("adviceLabel").toStdString(), Catch::Contains("the plate's print is at fault"));
    REQUIRE(walk.box().checks().size() == 1);
    // 1/0.97 − 1 = 3.1 %; the camera's distance, fitted as well, takes up to a tenth of it.
    CHECK_THAT(walk.box().checks()[0].rod->readMm, Catch::WithinAbs(103.0, 0.4));

    walk.page().showStep(SetupStepKind::Rule);
    measureBars(walk, 200.0 * kPrinted, 150.0 * kPrinted);
    CHECK(walk.said("foundLabel").contains("97.00 % across"));
    walk.page().showStep(SetupStepKind::Rod);
    CHECK(walk.said("stateLabel").contains("To do"));
    CHECK(walk.said("foundLabel").contains("file was changed since"));
    checkWithRod(walk, photo);
    CHECK(walk.said("resultLabel").startsWith(QStringLiteral("✓")));
    CHECK(walk.said("stateLabel").contains("Done"));
    REQUIRE(walk.box().checks().size() == 2);
    // A photo of 3 px to the millimetre: its strip's ends are told to 0.1 px each.
    CHECK_THAT(walk.box().checks()[1].rod->readMm, Catch::WithinAbs(100.0, 0.15));
    CHECK(walk.done() == 6);
    CHECK(walk.problems().isEmpty());
}
