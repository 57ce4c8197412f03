// SPDX-License-Identifier: GPL-3.0-or-later
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "cli/demo_charts.h"
#include "cli/demo_overlays.h"
#include "cli/interrupt.h"
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
    std::string overlays = "all";
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
    DemoOverlays overlays(store, out / "overlays", options.overlays);
    const auto summaries = addHouse(store, house, options.calibration, options.jobs, terminalProgress(),
                                    [&](const PhotoResult& result) { overlays.take(result); });
    const auto histories = historiesFromStore(store);
    const std::string report = reportOf(histories, summaries);
    std::cout << report << std::flush;
    writeTables(histories, report, out);
    writeDemoCharts(histories, out / "charts");
    overlays.finish();
    std::cout << "\nResults are in " << fs::absolute(out).lexically_normal().string()
              << ": collection/, charts/, " << (options.overlays == "none" ? "" : "overlays/, ")
              << "table.txt, table.csv\n";
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
