// SPDX-License-Identifier: GPL-3.0-or-later
// Prints error, coverage, refusals and silent mistakes of the measures against truth over seeded rendered scenes, as
// tables for docs/measuring-method.md.
// Usage: bench_accuracy [SCENES] [FIRST_SEED] [--photos DIR] [--rows FILE] [--jobs N] [--ground dark|pale]
//   SCENES     photos per table: one with every animal in its stated plane, one with depth and pitch drawn
//   --photos   photos are kept there, and those already there are not rendered again
//   --ground   pale animals before a dark plate, or nearly white ones before the white one
//   --rows     one line a measure, tab-separated, for a closer look
#include <atomic>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

#include "accuracy_row.h"
#include "accuracy_tables.h"
#include "box_file.h"
#include "photo_file.h"
#include "photograph.h"
#include "ringrule/imaging/memory.h"
#include "ringrule/imaging/threads.h"

namespace {

namespace fs = std::filesystem;
using bench::PhotoScore;
using bench::Stand;

struct Request {
    int scenes = 200;
    std::uint64_t firstSeed = 0;
    fs::path photos, rows;
    bench::Ground ground = bench::Ground::Usual;
    int jobs = 2;
};

Request requestFrom(int argc, char** argv) {
    Request request;
    int plain = 0;
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        const auto value = [&] { return i + 1 < argc ? std::string(argv[++i]) : std::string(); };
        if (word == "--photos")
            request.photos = value();
        else if (word == "--rows")
            request.rows = value();
        else if (word == "--jobs")
            request.jobs = std::stoi(value());
        else if (word == "--ground")
            request.ground = value() == "dark" ? bench::Ground::PaleOnDark : bench::Ground::WhiteOnPale;
        else if (plain++ == 0)
            request.scenes = std::stoi(word);
        else
            request.firstSeed = std::stoull(word);
    }
    // Whole groups of five: the fifth is the second view of the fourth.
    request.firstSeed -= request.firstSeed % 5;
    request.scenes = (request.scenes + 4) / 5 * 5;
    return request;
}

PhotoScore scored(std::uint64_t seed, Stand stand, const fs::path& folder, const Request& request) {
    const bench::AccuracyScene drawn = bench::accuracyScene(seed, stand, request.ground);
    const std::string ground = request.ground == bench::Ground::PaleOnDark    ? "dark-"
                               : request.ground == bench::Ground::WhiteOnPale ? "pale-"
                                                                              : "";
    const std::string stem = ground + (stand == Stand::Loose ? "loose-" : "stated-") + std::to_string(seed);
    const fs::path photo = folder / (stem + "_rendered.jpg");
    const fs::path box = folder / (stem + ".box.json");
    if (!fs::exists(photo)) {
        const fs::path half = folder / (stem + ".part.jpg");
        render::writePhoto(render::photograph(drawn.scene), {"2031-01-06T09:00:00", 1, drawn.scene.sensor.jpegQuality},
                           half);
        fs::rename(half, photo);
    }
    render::writeBox(bench::boxTold(drawn), box);
    ringrule::PhotoOptions options;
    options.view = drawn.scene.view == render::View::Above   ? ringrule::View::Above
                   : drawn.scene.view == render::View::Front ? ringrule::View::Front
                                                             : ringrule::View::Side;
    const ringrule::PhotoReading reading = ringrule::measurePhoto(photo, ringrule::readBox(box), options);
    if (request.photos.empty()) fs::remove(photo), fs::remove(box);
    return bench::scoreOf(drawn, seed, stand, reading);
}

/// All scenes of one table, several at a time; the order is that of the seeds however many threads there are.
std::vector<PhotoScore> allScored(const Request& request, Stand stand, const fs::path& folder) {
    std::vector<PhotoScore> scores(static_cast<std::size_t>(request.scenes));
    std::atomic<std::size_t> next{0};
    std::exception_ptr failure;
    std::atomic<bool> failed{false};
    const auto work = [&] {
        try {
            for (std::size_t i = next++; i < scores.size() && !failed; i = next++)
                scores[i] = scored(request.firstSeed + i, stand, folder, request);
        } catch (...) {
            if (!failed.exchange(true)) failure = std::current_exception();
        }
    };
    std::vector<std::thread> threads;
    for (int i = 0; i < request.jobs; ++i) threads.emplace_back(work);
    for (std::thread& thread : threads) thread.join();
    if (failure) std::rethrow_exception(failure);
    for (std::size_t i = 4; i < scores.size(); i += 5) bench::addGirthFromTwoViews(scores[i - 1], scores[i]);
    return scores;
}

int measureAll(const Request& request) {
    const fs::path scratch = fs::temp_directory_path() / ("ringrule-bench-" + std::to_string(getpid()));
    const fs::path folder = request.photos.empty() ? scratch : request.photos;
    fs::create_directories(folder);
    const std::vector<PhotoScore> stated = allScored(request, Stand::Stated, folder);
    const std::vector<PhotoScore> loose = allScored(request, Stand::Loose, folder);
    if (request.photos.empty()) fs::remove_all(scratch);
    if (!request.rows.empty()) {
        std::ofstream rows(request.rows);
        for (const auto* scores : {&stated, &loose})
            for (const PhotoScore& score : *scores) rows << score.lines();
    }
    std::printf("%s", bench::tablesOf(stated, loose).c_str());
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    ringrule::keepLargePagesMapped();
    ringrule::useOneThreadPerPhoto();
    try {
        return measureAll(requestFrom(argc, argv));
    } catch (const std::exception& error) {
        std::fprintf(stderr, "bench_accuracy: %s\n", error.what());
        return 2;
    }
}
