// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/picture_run.h"

#include <QAbstractButton>
#include <QDialog>
#include <QEventLoop>
#include <QPixmap>
#include <QTabWidget>
#include <QTimer>

#include "app/animal_events_model.h"
#include "app/animals_page.h"
#include "app/box_page.h"
#include "app/growth_page.h"
#include "app/import_dialog.h"
#include "app/main_window.h"
#include "app/new_animal_dialog.h"
#include "app/new_session_dialog.h"
#include "app/record_dialog.h"
#include "app/settings_dialog.h"

namespace ringrule {
namespace {

constexpr int kLookEveryMs = 20;
/// A small laptop's screen: what fits there fits everywhere.
constexpr int kWidth = 1280;
constexpr int kHeight = 800;
/// Looking further back takes long in a large collection.
constexpr std::size_t kMostDays = 4;

bool save(MainWindow& window, const std::filesystem::path& folder, const QString& name) {
    waitUntilIdle(window);
    return window.grab().save(QString::fromStdString((folder / (name.toStdString() + ".png")).string()));
}

/// The newest day after which an animal needed a look; a page without a finding is a poor picture.
void reviewNewestFindings(MainWindow& window) {
    std::vector<Date> days = window.collection().told().days;
    if (days.size() > kMostDays) days.resize(kMostDays);
    for (const Date day : days) {
        for (const Finding& finding : window.collection().told().findings)
            if (finding.kind != FindingKind::CannotTell && finding.kind != FindingKind::MeasureDoubtful) return;
        window.reviewAsOf(day);
        waitUntilIdle(window);
    }
}

}  // namespace

void waitUntilIdle(MainWindow& window) {
    QEventLoop loop;
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, &loop, [&] {
        if (!window.busy()) loop.quit();
    });
    timer.start(kLookEveryMs);
    loop.exec();
}

namespace {

bool saveDialog(QDialog& dialog, const std::filesystem::path& folder, const QString& name) {
    // Shown, for only then are its parts styled and their sizes known.
    dialog.setAttribute(Qt::WA_DontShowOnScreen);
    dialog.show();
    dialog.adjustSize();
    return dialog.grab().save(QString::fromStdString((folder / (name.toStdString() + ".png")).string()));
}

/// The forms that open over the pages.
bool saveDialogs(MainWindow& window, const std::filesystem::path& folder) {
    Collection& collection = window.collection();
    const JudgeOptions thresholds;
    SettingsDialog settings(window.settings(), &thresholds);
    NewSessionDialog session(collection, collection.keeper());
    NewAnimalDialog animal(collection);
    ImportDialog import(collection);
    std::vector<RecordField> fields = recordKind("feeding").fields;
    std::erase_if(fields, [](const RecordField& field) { return field.type == FieldType::Link; });
    RecordDialog feeding(collection, QStringLiteral("P4: ") + eventKindWords("feeding"), {}, fields, {}, {});
    return saveDialog(settings, folder, QStringLiteral("settings")) &&
           saveDialog(session, folder, QStringLiteral("new-session")) &&
           saveDialog(animal, folder, QStringLiteral("new-animal")) &&
           saveDialog(import, folder, QStringLiteral("import")) &&
           saveDialog(feeding, folder, QStringLiteral("note-feeding"));
}

/// What pages show beside what they open with: the other tabs of an animal, and its growth with curve and diets.
bool saveOtherSides(MainWindow& window, const std::filesystem::path& folder) {
    const std::vector<Animal>& animals = window.collection().animals();
    if (animals.empty()) return true;
    // In the demo the animal with a story is the fourth pipefish.
    AnimalId chosen = animals.front().id;
    for (const Animal& each : animals)
        if (each.code == "P4") chosen = each.id;
    bool good = true;
    window.showPage(1);
    window.findChild<AnimalsPage*>()->select(chosen);
    auto* tabs = window.findChild<QTabWidget*>(QStringLiteral("historyTabs"));
    for (const auto& [tab, name] : {std::pair{1, "animals-photos"}, std::pair{2, "animals-events"}}) {
        tabs->setCurrentIndex(tab);
        good = save(window, folder, QString::fromUtf8(name)) && good;
    }
    tabs->setCurrentIndex(0);
    window.showPage(2);
    window.findChild<GrowthPage*>()->pickOut(chosen);
    window.findChild<QAbstractButton*>(QStringLiteral("curveCheck"))->setChecked(true);
    return save(window, folder, QStringLiteral("growth-one")) && good;
}

}  // namespace

bool savePictures(MainWindow& window, const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder);
    window.resize(kWidth, kHeight);
    bool good = true;
    if (!window.collection().isOpen()) return save(window, folder, QStringLiteral("welcome"));
    waitUntilIdle(window);
    reviewNewestFindings(window);
    for (int page = 0; page < window.pageCount(); ++page) {
        window.showPage(page);
        good = save(window, folder, window.pageName(page)) && good;
    }
    auto* box = window.findChild<BoxPage*>();
    // By value: what runs meanwhile may look at the box again.
    const std::vector<SetupStep> steps = box->current().steps();
    for (const SetupStep& step : steps) {
        const std::string_view id = setupStepId(step.kind);
        box->showStep(step.kind);
        good = save(window, folder,
                    QStringLiteral("box-") + QString::fromUtf8(id.data(), static_cast<qsizetype>(id.size()))) &&
               good;
    }
    good = saveOtherSides(window, folder) && good;
    return saveDialogs(window, folder) && good;
}

}  // namespace ringrule
