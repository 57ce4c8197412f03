// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cstdlib>
#include <thread>

#include <sys/resource.h>
#include <opencv2/core.hpp>

#include "ringrule/imaging/memory.h"

using namespace ringrule;

namespace {

// Page faults of making and dropping a 12-megapixel colour image.
long faultsOfOneImage() {
    const auto faults = [] {
        rusage usage{};
        getrusage(RUSAGE_SELF, &usage);
        return usage.ru_minflt;
    };
    const long before = faults();
    cv::Mat(3000, 4000, CV_8UC3, cv::Scalar(1, 2, 3)).setTo(7);
    return faults() - before;
}

}  // namespace

#ifdef __GLIBC__
TEST_CASE("Freed images leave their pages to the next ones, on any thread", "[memory]") {
    keepLargePagesMapped();
    long again = 0;
    std::thread([&again] {
        (void)faultsOfOneImage();
        again = faultsOfOneImage();
    }).join();
    // 36 MB are 8,789 pages; a few faults come from elsewhere.
    CHECK(again < 200);
}
#endif
