// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/fill_in.h"

#include <vector>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

// Values weighted by how much of them is seen, 0 … 1.
struct Level {
    cv::Mat1f value;
    cv::Mat1f seen;
};

Level halved(const Level& level) {
    const cv::Size size((level.value.cols + 1) / 2, (level.value.rows + 1) / 2);
    cv::Mat1f weighted;
    cv::multiply(level.value, level.seen, weighted);
    Level half;
    cv::resize(weighted, half.value, size, 0, 0, cv::INTER_AREA);
    cv::resize(level.seen, half.seen, size, 0, 0, cv::INTER_AREA);
    half.value /= cv::max(half.seen, 1e-6F);
    // A little that is seen is enough to go by; beyond that the level below is left as it is.
    half.seen = cv::min(half.seen * 4.0F, 1.0F);
    return half;
}

void blendFromBelow(Level& level, const Level& below) {
    cv::Mat1f coarse;
    cv::resize(below.value, coarse, level.value.size(), 0, 0, cv::INTER_LINEAR);
    level.value = coarse + (level.value - coarse).mul(level.seen);
}

}  // namespace

void fillIn(cv::Mat1b& grey, const cv::Mat1b& hidden) {
    if (cv::countNonZero(hidden) == static_cast<int>(hidden.total())) return;
    std::vector<Level> levels(1);
    grey.convertTo(levels[0].value, CV_32F);
    levels[0].seen = cv::Mat1f(grey.size(), 1.0F);
    levels[0].seen.setTo(0.0F, hidden);
    while (levels.back().value.cols > 2 && levels.back().value.rows > 2) levels.push_back(halved(levels.back()));
    for (std::size_t i = levels.size() - 1; i-- > 0;) blendFromBelow(levels[i], levels[i + 1]);
    cv::Mat1b filled;
    levels[0].value.convertTo(filled, CV_8U);
    filled.copyTo(grey, hidden);
}

}  // namespace ringrule
