// SPDX-License-Identifier: GPL-3.0-or-later
// The box page: from a new plate to a box that is set up.
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QStackedWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "app/box_check_model.h"
#include "app/box_page.h"
#include "app/check_panel.h"
#include "app/lens_panel.h"
#include "ringrule/error.h"
#include "small_collection.h"

using namespace ringrule;

namespace {

/// The box page of the small collection, with its job.
struct Bench {
    Collection collection;
    JobRunner job;
    std::unique_ptr<BoxPage> page;
    QString news;
    QString problem;

    explicit Bench(const std::filesystem::path& folder) {
        collection.open(folder);
        page = std::make_unique<BoxPage>(collection, job);
        page->resize(1060, 760);
        page->show();
        QObject::connect(page.get(), &BoxPage::news, [this](const QString& sentence) { news = sentence; });
        QObject::connect(page.get(), &BoxPage::problem, [this](const QString& sentence) { problem = sentence; });
    }
    template <class Widget>
    Widget& part(const char* name) const {
        auto* found = page->findChild<Widget*>(QString::fromUtf8(name));
        REQUIRE(found != nullptr);
        return *found;
    }
    [[nodiscard]] SetupState state(SetupStepKind kind) const {
        for (const SetupStep& step : page->current().steps())
            if (step.kind == kind) return step.state;
        return SetupState::CannotTell;
    }
    void waitForJob() {
        REQUIRE(QTest::qWaitFor([this] { return !job.running(); }, 30000));
    }
};

std::filesystem::path emptyCollection(const QTemporaryDir& place) {
    const std::filesystem::path folder = std::filesystem::path(place.path().toStdString()) / "empty";
    (void)Store::create(folder);
    return folder;
}

NewBox trayBox(const QTemporaryDir& place) {
    NewBox wanted;
    wanted.name = "Fry tray, left";
    wanted.size = {100.0, 70.0};
    wanted.pdf = place.filePath("plate.pdf").toStdString();
    return wanted;
}

}  // namespace

TEST_CASE("without a box the page says what to do first") {
    const QTemporaryDir place;
    const Bench bench(emptyCollection(place));
    CHECK(bench.part<QStackedWidget>("sides").currentWidget()->objectName() == "emptySide");
    CHECK(bench.part<QPushButton>("firstBoxButton").isVisible());
    CHECK(bench.page->current().index() == -1);
}

TEST_CASE("a new box has its plate as PDF and a file, and the steel rule is the next step") {
    const QTemporaryDir place;
    Bench bench(emptyCollection(place));
    bench.page->current().make(trayBox(place));
    CHECK(std::filesystem::file_size(place.filePath("plate.pdf").toStdString()) > 1000);
    CHECK(bench.page->current().file().filename() == "fry-tray-left.json");
    CHECK(bench.part<QComboBox>("boxCombo").currentText() == "Fry tray, left");
    CHECK(bench.part<QListView>("stepList").model()->rowCount() == 6);
    CHECK(bench.state(SetupStepKind::Print) == SetupState::Done);
    CHECK(bench.state(SetupStepKind::Rule) == SetupState::ToDo);
    CHECK(bench.part<QStackedWidget>("panels").currentWidget()->objectName() == "RulePanel");
    // A second box of the same file is refused and changes nothing.
    CHECK_THROWS_AS(bench.page->current().make(trayBox(place)), Error);
    CHECK(bench.page->current().files().size() == 1);
}

TEST_CASE("what the steel rule reads corrects the plate and makes the step done") {
    const QTemporaryDir place;
    Bench bench(emptyCollection(place));
    bench.page->current().make(trayBox(place));
    bench.page->showStep(SetupStepKind::Rule);
    CHECK_FALSE(bench.part<QPushButton>("correctButton").isEnabled());
    bench.part<QDoubleSpinBox>("acrossStatedSpin").setValue(100.0);
    bench.part<QDoubleSpinBox>("acrossReadSpin").setValue(99.0);
    REQUIRE(bench.part<QPushButton>("correctButton").isEnabled());
    bench.part<QPushButton>("correctButton").click();
    CHECK(bench.problem.isEmpty());
    CHECK(bench.news.contains("99.00"));
    CHECK(bench.state(SetupStepKind::Rule) == SetupState::Done);
    CHECK_THAT(bench.page->current().box().plate.widthMm, Catch::WithinAbs(99.0, 1e-9));
    // A reading that no printer makes is refused, and the file stays.
    bench.part<QDoubleSpinBox>("acrossReadSpin").setValue(60.0);
    bench.part<QPushButton>("correctButton").click();
    CHECK_FALSE(bench.problem.isEmpty());
    CHECK_THAT(bench.page->current().box().plate.widthMm, Catch::WithinAbs(99.0, 1e-9));
}

TEST_CASE("window, water and the animal's plane go into the box file") {
    const QTemporaryDir place;
    Bench bench(emptyCollection(place));
    bench.page->current().make(trayBox(place));
    bench.page->showStep(SetupStepKind::Water);
    auto* panel = bench.part<QStackedWidget>("panels").currentWidget();
    auto* save = panel->findChild<QPushButton*>("saveButton");
    CHECK_FALSE(save->isEnabled());
    panel->findChild<QComboBox*>("windowCombo")->setCurrentIndex(1);
    panel->findChild<QDoubleSpinBox*>("cameraSpin")->setValue(380.0);
    panel->findChild<QDoubleSpinBox*>("depthSpin")->setValue(45.0);
    REQUIRE(save->isEnabled());
    save->click();
    REQUIRE(bench.page->current().box().media.has_value());
    CHECK(bench.page->current().box().media->windowIndex == 1.52);
    CHECK(bench.page->current().box().media->cameraToWindowMm == 380.0);
    CHECK(bench.state(SetupStepKind::Water) == SetupState::Done);
    bench.page->showStep(SetupStepKind::AnimalPlane);
    panel = bench.part<QStackedWidget>("panels").currentWidget();
    panel->findChild<QDoubleSpinBox*>("distanceSpin")->setValue(9.0);
    panel->findChild<QDoubleSpinBox*>("toleranceSpin")->setValue(1.5);
    panel->findChild<QPushButton*>("saveButton")->click();
    CHECK(bench.page->current().box().animalPlane.toleranceMm == 1.5);
    CHECK(bench.state(SetupStepKind::AnimalPlane) == SetupState::Done);
}

TEST_CASE("too few lens photos give no lens, and the page says which photos were good for what") {
    Bench bench(smallCollection());
    auto& panel = *bench.page->findChild<LensPanel*>();
    QStringList photos;
    for (const auto& entry : std::filesystem::directory_iterator(photosOfSmallCollection()))
        photos << QString::fromStdString(entry.path().string());
    panel.calibrate(photos.mid(0, 2));
    CHECK(bench.job.running());
    bench.waitForJob();
    REQUIRE(panel.report().has_value());
    CHECK(panel.report()->refusal->reason == "too-few-lens-photos");
    CHECK(panel.findChild<QTableView*>("photoTable")->model()->rowCount() == 2);
    CHECK_FALSE(panel.findChild<QPushButton*>("useButton")->isEnabled());
}

TEST_CASE("a box check by a photo says how the plate stands and is kept with the box") {
    Bench bench(smallCollection());
    auto& panel = *bench.page->findChild<CheckPanel*>();
    panel.findChild<QComboBox*>("kindCombo")->setCurrentIndex(0);
    panel.check(QString::fromStdString((photosOfSmallCollection() / "P1-a_rendered.jpg").string()));
    bench.waitForJob();
    CHECK(panel.findChild<QLabel*>("resultLabel")->text().startsWith("✓"));
    CHECK(panel.findChild<QLabel*>("findingsLabel")->text().contains("8 of 8 markers"));
    REQUIRE(bench.page->current().checks().size() == 1);
    CHECK(bench.page->current().checks().front().passed);
    CHECK(bench.page->current().checks().front().checkedOn == "2031-01-06");
    CHECK(panel.findChild<QTableView*>("checkTable")->model()->rowCount() == 1);
}

TEST_CASE("the models of the box page keep Qt's rules and say every state in words and sign") {
    BoxStepModel steps;
    const QAbstractItemModelTester testedSteps(&steps, QAbstractItemModelTester::FailureReportingMode::Fatal);
    steps.show(boxSetup(std::nullopt, {}, "2031-01-06"));
    CHECK(steps.rowCount() == 6);
    CHECK(steps.rowOf(SetupStepKind::Rod) == 5);
    for (int row = 0; row < steps.rowCount(); ++row)
        CHECK_FALSE(steps.index(row).data(Qt::AccessibleTextRole).toString().isEmpty());
    steps.show({});
    CHECK(steps.rowCount() == 0);

    BoxCheckModel checks;
    const QAbstractItemModelTester testedChecks(&checks, QAbstractItemModelTester::FailureReportingMode::Fatal);
    PastBoxCheck early;
    early.checkedOn = "2031-01-06";
    early.passed = true;
    PastBoxCheck late;
    late.checkedOn = "2031-02-03";
    late.rod = PastRodReading{100.0, 101.0, 0.4, 0.014};
    late.findings.emplace_back(BoxFault::LengthOff, true, "The rod reads 1 % long.");
    checks.show({early, late});
    CHECK(checks.index(0, BoxCheckModel::Day).data().toString() == "2031-02-03");
    CHECK(checks.index(0, BoxCheckModel::Verdict).data().toString().contains("does not hold"));
    CHECK(checks.index(0, BoxCheckModel::Rod).data().toString() == "101.00 ± 0.40 of 100.00 mm");
    CHECK(checks.index(0, BoxCheckModel::Found).data().toString() == "The rod reads 1 % long.");
    CHECK(checks.index(1, BoxCheckModel::Rod).data().toString() == "plate alone");

    LensPhotoModel photos;
    const QAbstractItemModelTester testedPhotos(&photos, QAbstractItemModelTester::FailureReportingMode::Fatal);
    LensPhoto used;
    used.state = LensPhotoState::Used;
    LensPhoto outlier;
    outlier.state = LensPhotoState::Outlier;
    photos.show({used, outlier});
    CHECK(photos.toRetake() == 1);
    CHECK(photos.index(1, LensPhotoModel::State).data().toString().contains("does not fit"));
}
