// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/demo_charts.h"
#include "cli/interrupt.h"
#include "cli/overlay_files.h"
#include "cli/session_report.h"
#include "ringrule/judge/review.h"
#include "ringrule/sheets/drawing_application.h"
#include "ringrule/workflow/collection_review.h"
#include "ringrule/workflow/session_table.h"

namespace ringrule::cli {
namespace {

namespace fs = std::filesystem;

struct DemoOptions {
    std::string samples = "sample_images";
    std::string calibration = "calibration";
    std::string out = "demo-out";
    std::string overlays = "newest";
    bool again = false;
    int jobs = 0;
};

/// Takes an earlier demo's collection away, and nothing else.
void removeCollection(const fs::path& folder) {
    for (const char* name :
         {"collection.sqlite", "collection.sqlite-wal", "collection.sqlite-shm", "photos", "calibration"}) {
        fs::remove_all(folder / name);
    }
}

void writeFile(const fs::path& file, const std::string& content) {
    std::ofstream out(file, std::ios::binary);
    out << content;
    out.close();
    if (!out) throw Error(ErrorKind::NoSpace, "could not be written; is the disk full?", file.string());
}

/// The readings of the photos that get an overlay.
std::vector<PhotoReading> readingsToDraw(std::vector<PhotoReading> readings, const std::string& which) {
    if (which == "none" || readings.empty()) return {};
    if (which == "all") return readings;
    // The photos come session after session; the newest one's folder is that of the last photo.
    const auto day = [](const PhotoReading& reading) { return reading.takenAt.value_or("").substr(0, 10); };
    const std::string newest = day(readings.back());
    std::erase_if(readings, [&](const PhotoReading& reading) { return day(reading) != newest; });
    return readings;
}

void drawOverlays(const std::vector<PhotoReading>& readings, const Store& store, const fs::path& folder) {
    std::map<int, std::string> labels;
    for (const Animal& animal : store.animals()) {
        if (animal.card) labels[*animal.card] = animal.code;
    }
    OverlayFiles overlays(folder);
    for (const PhotoReading& reading : readings) overlays.write(reading, labels);
}

void writeTables(std::span<const AnimalHistory> histories, const std::string& report, const fs::path& out) {
    std::string csv = csvHead();
    for (const Date day : sessionDays(histories)) {
        csv += csvLines(sessionRows(histories, day, reviewAnimals(histories, day)));
    }
    writeFile(out / "table.csv", csv);
    writeFile(out / "table.txt", report);
}

std::string reportOf(std::span<const AnimalHistory> histories, const std::vector<SessionSummary>& summaries) {
    std::ostringstream report;
    for (const SessionSummary& summary : summaries) {
        printSession(report, histories, summary.on);
        printSummary(report, summary);
        printTroubles(report, summary, "  ! ");
        report << '\n';
    }
    if (!summaries.empty()) printFindings(report, histories, summaries.back().on);
    printFlagDiary(report, histories);
    return report.str();
}

ExitStatus demo(const DemoOptions& options) {
    const fs::path out = options.out;
    const fs::path collection = out / "collection";
    const fs::path house = fs::path(options.samples) / "house.json";
    checkHouse(house, options.calibration);
    if (options.again) removeCollection(collection);
    if (fs::exists(collection / "collection.sqlite")) {
        throw Error(ErrorKind::BadUse, "holds an earlier demo: say --again to replace it, or choose another --out",
                    out.string());
    }
    ensureDrawingApplication();
    Store store = Store::create(collection);
    std::vector<PhotoReading> readings;
    const auto keep = [&](const PhotoResult& result) {
        if (result.reading && options.overlays != "none") readings.push_back(*result.reading);
    };
    const auto summaries = addHouse(store, house, options.calibration, options.jobs, terminalProgress(), keep);
    const auto histories = historiesFromStore(store);
    const std::string report = reportOf(histories, summaries);
    std::cout << report << std::flush;
    writeTables(histories, report, out);
    writeDemoCharts(histories, out / "charts");
    drawOverlays(readingsToDraw(std::move(readings), options.overlays), store, out / "overlays");
    std::cout << "\nResults are in " << fs::absolute(out).lexically_normal().string()
              << ": collection/, charts/, overlays/, table.txt, table.csv\n";
    return ExitStatus::Done;
}

}  // namespace

void addDemoCommand(CLI::App& app, Run& chosen) {
    auto options = std::make_shared<DemoOptions>();
    CLI::App* command = app.add_subcommand("demo", "Runs everything over the sample photos into a new collection");
    command->add_option("--samples", options->samples, "Folder of the sample photos and house.json")
        ->capture_default_str();
    command->add_option("--calibration", options->calibration, "Folder of the box files")->capture_default_str();
    command->add_option("--out", options->out, "Folder for the results")->capture_default_str();
    command->add_option("--overlays", options->overlays, "Sessions whose photos are drawn with their measures")
        ->check(CLI::IsMember({"none", "newest", "all"}))
        ->capture_default_str();
    command->add_flag("--again", options->again, "Replace the collection of an earlier demo in the same folder");
    command->add_option("--jobs", options->jobs, "Photos measured at a time (0: one for each core)")
        ->check(CLI::Range(0, 1024));
    command->callback([&chosen, options] { chosen = [options] { return demo(*options); }; });
}

}  // namespace ringrule::cli
