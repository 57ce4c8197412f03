// SPDX-License-Identifier: GPL-3.0-or-later
#include "outline/reduced.h"

#include <algorithm>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr int kSkipRowsFrom = 4;

}  // namespace

Reduced reducedLight(const cv::Mat& grey, const Tone& tone, cv::Rect partPx, int factor) {
    partPx &= cv::Rect({0, 0}, grey.size());
    const cv::Size size(partPx.width / factor, partPx.height / factor);
    Reduced reduced;
    reduced.originPx = partPx.tl();
    reduced.factor = factor;
    if (size.width < 1 || size.height < 1) return reduced;
    cv::Mat part = grey(cv::Rect(partPx.tl(), size * factor));
    // Of large blocks every second row is enough: what is searched at that scale is far larger than a row.
    if (factor >= kSkipRowsFrom && factor % 2 == 0) {
        part = cv::Mat(part.rows / 2, part.cols, part.type(), part.data, part.step[0] * 2);
    }
    cv::Mat small = part;
    if (factor > 1) cv::resize(part, small, size, 0.0, 0.0, cv::INTER_AREA);
    reduced.light.create(size);
    for (int y = 0; y < size.height; ++y) {
        const unsigned char* from = small.ptr<unsigned char>(y);
        std::transform(from, from + size.width, reduced.light.ptr<float>(y),
                       [&tone](unsigned char value) { return tone.lightOf[value]; });
    }
    return reduced;
}

Reduced reducedLight(const Photo& photo, const Tone& tone, cv::Rect partPx, int factor) {
    if (factor % 2 != 0 || photo.halfGrey.empty()) return reducedLight(photo.grey, tone, partPx, factor);
    const cv::Point from = partPx.tl() / 2;
    const cv::Point to = partPx.br() / 2;
    Reduced reduced = reducedLight(photo.halfGrey, tone, {from, to}, factor / 2);
    reduced.originPx *= 2;
    reduced.factor = factor;
    return reduced;
}

}  // namespace ringrule
