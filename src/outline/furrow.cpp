// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/furrow.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kHalfFurrow = 0.2;  ///< of the body's half-width: half of the widest furrow
constexpr double kLeastDeep =
    0.45;  ///< of it: so far inside the filled body a furrow reaches; turns of a tail are thinner
constexpr double kStoutNearby = 0.75;  ///< of it: half-width of the filled body within a half-width
constexpr double kNotPlate = 0.12;  ///< of the step from body to plate: by this much a furrow is lighter than the plate
constexpr int kLeastFurrowPx = 4;

double greatestIn(const cv::Mat1f& values, const cv::Mat1b& mask) {
    double greatest = 0.0;
    cv::minMaxLoc(values, nullptr, &greatest, nullptr, nullptr, mask);
    return greatest;
}

}  // namespace

cv::Mat1b furrowsIn(const FurrowLight& seen, const cv::Mat1b& body, double halfWidthPx) {
    cv::Mat1b furrows(body.size(), static_cast<unsigned char>(0));
    const int width = 2 * std::max(1, static_cast<int>(std::lround(kHalfFurrow * halfWidthPx))) + 1;
    cv::Mat1b filled;
    cv::morphologyEx(body, filled, cv::MORPH_CLOSE, cv::getStructuringElement(cv::MORPH_ELLIPSE, {width, width}));
    filled |= body;
    cv::Mat1b gaps;
    cv::subtract(filled, body, gaps);
    cv::Mat1f depth;
    cv::distanceTransform(filled, depth, cv::DIST_L2, 3);
    cv::Mat1f smooth;
    cv::blur(seen.light, smooth, {3, 3});
    const double plate = seen.outside - kNotPlate * (seen.outside - seen.inside);
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat centroids;
    const int count = cv::connectedComponentsWithStats(gaps, labels, stats, centroids, 8, CV_32S);
    for (int label = 1; label < count; ++label) {
        if (stats.at<int>(label, cv::CC_STAT_AREA) < kLeastFurrowPx) continue;
        const int reach = static_cast<int>(halfWidthPx);
        const cv::Rect around =
            cv::Rect(stats.at<int>(label, cv::CC_STAT_LEFT) - reach, stats.at<int>(label, cv::CC_STAT_TOP) - reach,
                     stats.at<int>(label, cv::CC_STAT_WIDTH) + 2 * reach,
                     stats.at<int>(label, cv::CC_STAT_HEIGHT) + 2 * reach) &
            cv::Rect({0, 0}, body.size());
        cv::Mat1b gap;
        cv::compare(labels(around), label, gap, cv::CMP_EQ);
        const cv::Mat1f nearby = depth(around);
        if (greatestIn(nearby, gap) < kLeastDeep * halfWidthPx || greatestIn(smooth(around), gap) > plate) continue;
        if (greatestIn(nearby, filled(around)) < kStoutNearby * halfWidthPx) continue;
        cv::Mat1b whole = furrows(around);
        whole |= gap;
    }
    return furrows;
}

}  // namespace ringrule
