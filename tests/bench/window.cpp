// SPDX-License-Identifier: GPL-3.0-or-later
// How the window answers: bench_window SAMPLES BOX [COLLECTION]. Prints, and judges nothing,
//   - the longest time in which the window's thread did nothing else, while a session of photos is measured;
//   - from opening COLLECTION to a window that answers, and from a key press to the next photo, when one is given;
//   - the same opening, and the drawing of its growth chart, for an invented collection of 1,000 animals.
// bench_window --crowd FOLDER only makes that collection there.
#include <QApplication>
#include <QComboBox>
#include <QElapsedTimer>
#include <QImage>
#include <QListView>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <string_view>
#include <vector>

#include "app/chart_widget.h"
#include "app/main_window.h"
#include "app/photo_desk.h"
#include "app/picture_run.h"
#include "app/session_page.h"
#include "ringrule/error.h"
#include "ringrule/imaging/photo.h"
#include "ringrule/records/store.h"

using namespace ringrule;

namespace {

constexpr int kAnimals = 1000;
constexpr int kMonths = 36;

constexpr int kLookEveryMs = 5;

/// Watches the event loop: a timer comes late by as long as the loop was blocked.
class LoopWatch {
public:
    LoopWatch() {
        QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] {
            longestMs_ = std::max(longestMs_, static_cast<double>(since_.nsecsElapsed()) * 1e-6 - kLookEveryMs);
            since_.restart();
        });
        timer_.setTimerType(Qt::PreciseTimer);
        timer_.setInterval(kLookEveryMs);
    }
    void start() {
        longestMs_ = 0.0;
        since_.start();
        timer_.start();
    }
    double stop() {
        timer_.stop();
        return longestMs_;
    }

private:
    QTimer timer_;
    QElapsedTimer since_;
    double longestMs_ = 0.0;
};

void print(const char* what, double ms) {
    std::cout << std::left << std::setw(62) << what << std::right << std::fixed << std::setprecision(0) << std::setw(8)
              << ms << " ms\n";
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values.empty() ? 0.0 : values[values.size() / 2];
}

void measureWhileWatching(const std::filesystem::path& photos, const std::filesystem::path& boxFile) {
    const QTemporaryDir place;
    MainWindow window{Settings{}};
    window.show();
    window.createCollection(std::filesystem::path(place.path().toStdString()) / "new");
    window.collection().keepBox(boxFile);
    waitUntilIdle(window);
    Session session;
    session.keeper = "K1";
    LoopWatch watch;
    watch.start();
    window.measureSession(photos, session, window.collection().boxes().front());
    waitUntilIdle(window);
    print("longest block while a session is measured and shown", watch.stop());
}

void openAndStep(const std::filesystem::path& folder, const char* what) {
    QElapsedTimer clock;
    clock.start();
    MainWindow window{Settings{}};
    window.show();
    window.openCollection(folder);
    QApplication::processEvents();
    print(what, static_cast<double>(clock.elapsed()));
    waitUntilIdle(window);
    print("  until its findings and first photo are there too", static_cast<double>(clock.elapsed()));
    auto* list = window.findChild<QListView*>("photoList");
    auto* page = window.findChild<SessionPage*>();
    bool drawn = false;
    QObject::connect(page->findChild<PhotoDesk*>(), &PhotoDesk::pictureRead, page, [&] { drawn = true; });
    std::vector<double> steps;
    std::vector<double> ready;
    for (int k = 0; k < 10 && list->currentIndex().row() + 1 < list->model()->rowCount(); ++k) {
        clock.restart();
        drawn = false;
        page->next();
        while (!drawn && page->busy()) QApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
        QApplication::processEvents();
        steps.push_back(static_cast<double>(clock.nsecsElapsed()) * 1e-6);
        while (page->busy()) QApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
        ready.push_back(static_cast<double>(clock.nsecsElapsed()) * 1e-6);
    }
    if (!steps.empty()) {
        print("  next photo with its stored measures, drawn: median", median(steps));
        print("  until it can be corrected: median", median(ready));
    }
    window.showPage(2);
    auto* chart = window.findChild<QWidget*>("GrowthPage")->findChild<ChartWidget*>();
    clock.restart();
    QImage picture(chart->size(), QImage::Format_RGB32);
    chart->render(&picture);
    print("  growth chart drawn once", static_cast<double>(clock.nsecsElapsed()) * 1e-6);
    auto* which = window.findChild<QWidget*>("GrowthPage")->findChild<QComboBox*>("tankCombo");
    which->setCurrentIndex(0);
    waitUntilIdle(window);
    chart->showTimes(chart->chart().x.low, 0.5 * (chart->chart().x.low + chart->chart().x.high));
    double longest = 0.0;
    for (int k = 0; k < 12; ++k) {
        clock.restart();
        const double by = 0.05 * (chart->shown().x.high - chart->shown().x.low);
        chart->showTimes(chart->shown().x.low + by, chart->shown().x.high + by);
        chart->repaint();
        longest = std::max(longest, static_cast<double>(clock.nsecsElapsed()) * 1e-6);
    }
    print("  growth chart of every animal moved along: longest step", longest);
}

/// One photo a session, as small as a photo may be, with a measure of every animal in it.
void makeCrowd(const std::filesystem::path& folder) {
    Store store = Store::create(folder);
    store.together([&] {
        std::vector<AnimalId> animals;
        std::vector<TankId> tanks;
        const Date first = *parseDate("2029-01-08");
        for (int k = 0; k < 40; ++k) tanks.push_back(store.addTank({{}, "bay-" + std::to_string(k + 1), {}}));
        for (int k = 0; k < kAnimals; ++k) {
            Animal animal;
            animal.code = "A" + std::to_string(k + 1);
            animal.species = k % 2 == 0 ? "Syngnathus typhle" : "Hippocampus reidi";
            animal.shape = k % 2 == 0 ? "pipefish" : "seahorse";
            animal.hatchedOn = first - std::chrono::days(40 + k % 20);
            animals.push_back(store.addAnimal(animal));
            store.addStay({animals.back(), tanks[static_cast<std::size_t>(k) % tanks.size()], first, {}});
        }
        const QTemporaryDir pictures;
        for (int month = 0; month < kMonths; ++month) {
            Session session;
            session.on = first + std::chrono::days(30 * month);
            session.id = store.addSession(session);
            const QString file = pictures.filePath(QString::number(month) + ".png");
            QImage picture(80, 80, QImage::Format_RGB32);
            picture.fill(QColor(month, 0, 0));
            picture.save(file);
            StoredPhoto photo;
            photo.session = session.id;
            photo.contentHash = loadPhoto(file.toStdString()).contentHash;
            photo.originalName = "crowd.png";
            photo.widthPx = photo.heightPx = 80;
            const PhotoId id = store.addPhoto(photo, file.toStdString());
            std::vector<StoredMeasure> measures;
            for (int k = 0; k < kAnimals; ++k) {
                StoredMeasure measure;
                measure.photo = id;
                measure.animal = animals[static_cast<std::size_t>(k)];
                measure.animalIndex = k;
                measure.accepted = true;
                measure.measurement.shape = k % 2 == 0 ? Shape::Pipefish : Shape::Seahorse;
                // Each animal has a final length and a pace of its own, and scatters as photos do.
                const double most = 120.0 + 30.0 * ((k * 37) % 97) / 97.0, pace = 9.0 + (k * 17) % 7;
                const double scatter = 0.3 * (((k * 31 + month * 57) % 11) / 5.0 - 1.0);
                const double length = 40.0 + most * (1.0 - std::exp(-(month + 3.0) / pace)) + scatter;
                measure.measurement.standardLengthMm = {length, 0.3, 0.2};
                measure.measurement.trunkDepthMm = {length / (26.0 + (k % 5)), 0.04, 0.01};
                measure.measurement.depthRatio = {1.0 / (26.0 + (k % 5)), 0.0005, 0.0001};
                measures.push_back(std::move(measure));
            }
            (void)store.addMeasures(measures);
        }
    });
}

}  // namespace

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    if (argc < 3) {
        std::cerr << "bench_window SAMPLES BOX [COLLECTION]\n";
        return 2;
    }
    try {
        if (std::string_view(argv[1]) == "--crowd") {
            makeCrowd(argv[2]);
            return 0;
        }
        measureWhileWatching(argv[1], argv[2]);
        if (argc > 3) openAndStep(argv[3], "opening the collection, until the window answers");
        const QTemporaryDir place;
        const std::filesystem::path crowd = std::filesystem::path(place.path().toStdString()) / "crowd";
        makeCrowd(crowd);
        openAndStep(crowd, "opening 1,000 animals with 36 sessions, until the window answers");
    } catch (const Error& error) {
        std::cerr << "bench_window: " << error.what() << '\n';
        return 2;
    }
    return 0;
}
