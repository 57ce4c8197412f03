// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/picture_run.h"

#include <QEventLoop>
#include <QPixmap>
#include <QTimer>

#include "app/box_page.h"
#include "app/main_window.h"

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
    return good;
}

}  // namespace ringrule
