// SPDX-License-Identifier: GPL-3.0-or-later
// Prints how long the whole chain takes on one photo against plain full-size decodes of the same file, in grey and in
// colour, all in this process, warm, one thread, the same malloc settings, and the peak memory.
// Usage: bench_speed PHOTO BOX [ROUNDS] [VIEW]
#include <sys/resource.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <functional>
#include <vector>

#include <opencv2/core/utility.hpp>
#include <opencv2/imgcodecs.hpp>

#include "ringrule/error.h"
#include "ringrule/imaging/memory.h"
#include "ringrule/optics/box_file.h"
#include "ringrule/workflow/measure_photo.h"

namespace {

/// Processor time of this thread, which a busy machine disturbs less than the clock on the wall.
double threadMs() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

double millisecondsOf(const std::function<void()>& work) {
    const double start = threadMs();
    work();
    return threadMs() - start;
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Median of the rounds' ratios.
double ratioTo(const std::vector<double>& decodeMs, const std::vector<double>& chainMs) {
    std::vector<double> ratios;
    for (std::size_t i = 0; i < chainMs.size(); ++i) ratios.push_back(chainMs[i] / decodeMs[i]);
    return median(ratios);
}

int run(int argc, char** argv) {
    const char* photo = argv[1];
    const ringrule::Box box = ringrule::readBox(argv[2]);
    const int rounds = argc > 3 ? std::atoi(argv[3]) : 15;
    ringrule::PhotoOptions options;
    if (argc > 4) options.view = ringrule::viewFromName(argv[4]).value_or(ringrule::View::Side);

    std::vector<double> greyMs;
    std::vector<double> colourMs;
    std::vector<double> chainMs;
    int widthPx = 0;
    int heightPx = 0;
    bool measured = false;
    for (int round = 0; round < rounds + 2; ++round) {
        const double grey = millisecondsOf([&] {
            const cv::Mat decoded = cv::imread(photo, cv::IMREAD_GRAYSCALE);
            widthPx = decoded.cols;
            heightPx = decoded.rows;
        });
        const double colour = millisecondsOf([&] { static_cast<void>(cv::imread(photo, cv::IMREAD_COLOR)); });
        const double chain = millisecondsOf([&] {
            const ringrule::PhotoReading reading = ringrule::measurePhoto(photo, box, options);
            measured = !reading.animals.empty() && reading.animals.front().measurement.measured();
        });
        if (round < 2) continue;  // warm-up: page faults and caches
        greyMs.push_back(grey);
        colourMs.push_back(colour);
        chainMs.push_back(chain);
    }
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::printf("%s  %d x %d px, %.2f MB, %s\n", photo, widthPx, heightPx,
                1e-6 * static_cast<double>(std::filesystem::file_size(photo)), measured ? "measured" : "not measured");
    std::printf(
        "whole chain %.1f ms: %.2f of a grey decode (%.1f ms), %.2f of a colour decode (%.1f ms); medians of %d "
        "rounds; peak memory %.0f MB\n",
        median(chainMs), ratioTo(greyMs, chainMs), median(greyMs), ratioTo(colourMs, chainMs), median(colourMs), rounds,
        static_cast<double>(usage.ru_maxrss) / 1024.0);
    return measured ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 3) {
        std::fprintf(stderr, "usage: bench_speed PHOTO BOX [ROUNDS] [VIEW]\n");
        return 2;
    }
    cv::setNumThreads(1);
    ringrule::keepLargePagesMapped();
    try {
        return run(argc, argv);
    } catch (const ringrule::Error& error) {
        std::fprintf(stderr, "bench_speed: %s\n", error.what());
        return 2;
    }
}
