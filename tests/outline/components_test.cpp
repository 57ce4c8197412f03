// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/components.h"

#include <catch2/catch.hpp>
#include <random>

#include <opencv2/imgproc.hpp>

using namespace ringrule;

namespace {

/// Pixels set by chance; the same seed gives the same mask on every machine.
cv::Mat1b speckled(cv::Size size, double share, unsigned seed) {
    std::mt19937 random(seed);
    cv::Mat1b mask(size, static_cast<unsigned char>(0));
    for (unsigned char& pixel : mask) pixel = static_cast<double>(random()) < share * 4294967296.0 ? 255 : 0;
    return mask;
}

}  // namespace

TEST_CASE("Components are those that OpenCV's labelling finds") {
    // At a share of 0.4 nearly all of a mask hangs together in one winding component; at 0.05 there are hundreds.
    for (const double share : {0.0, 0.05, 0.25, 0.4, 1.0}) {
        const cv::Mat1b mask = speckled({97, 61}, share, 7);
        const Components ours = componentsOf(mask);
        cv::Mat1i labels;
        cv::Mat stats;
        cv::Mat centroids;
        const int count = cv::connectedComponentsWithStats(mask, labels, stats, centroids, 8, CV_32S);
        REQUIRE(std::ssize(ours.found) == count - 1);
        std::vector<int> theirs(ours.found.size() + 1, 0);
        for (int y = 0; y < mask.rows; ++y) {
            for (int x = 0; x < mask.cols; ++x) {
                int& pair = theirs[static_cast<std::size_t>(ours.labels(y, x))];
                if (pair == 0) pair = labels(y, x);
                REQUIRE(pair == labels(y, x));
            }
        }
        for (std::size_t k = 0; k < ours.found.size(); ++k) {
            const int label = theirs[k + 1];
            CHECK(ours.found[k].areaPx == stats.at<int>(label, cv::CC_STAT_AREA));
            CHECK(ours.found[k].bounds ==
                  cv::Rect(stats.at<int>(label, cv::CC_STAT_LEFT), stats.at<int>(label, cv::CC_STAT_TOP),
                           stats.at<int>(label, cv::CC_STAT_WIDTH), stats.at<int>(label, cv::CC_STAT_HEIGHT)));
        }
    }
}

TEST_CASE("Pixels that touch by a corner hang together, those a pixel apart do not") {
    cv::Mat1b mask(4, 6, static_cast<unsigned char>(0));
    mask(0, 0) = mask(1, 1) = mask(0, 4) = mask(2, 4) = 255;
    CHECK(componentsOf(mask).found.size() == 3);
}
