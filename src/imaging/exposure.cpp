// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/imaging/exposure.h"

#include <array>
#include <cassert>
#include <cstddef>
#include <cstdint>

namespace ringrule {
namespace {

using Histogram = std::array<std::int64_t, 256>;

Histogram histogramOf(const cv::Mat& grey, const cv::Mat& mask) {
    Histogram histogram{};
    for (int y = 0; y < grey.rows; ++y) {
        const auto* codes = grey.ptr<std::uint8_t>(y);
        const auto* wanted = mask.empty() ? nullptr : mask.ptr<std::uint8_t>(y);
        for (int x = 0; x < grey.cols; ++x)
            if (wanted == nullptr || wanted[x] != 0) ++histogram[codes[x]];
    }
    return histogram;
}

// The least code value that at least this share of the pixels does not exceed.
double quantile(const Histogram& histogram, std::int64_t pixels, double share) {
    std::int64_t below = 0;
    for (std::size_t code = 0; code < histogram.size(); ++code) {
        below += histogram[code];
        if (static_cast<double>(below) >= share * static_cast<double>(pixels)) return static_cast<double>(code);
    }
    return 255.0;
}

}  // namespace

Exposure exposureOf(const cv::Mat& grey, const cv::Mat& mask) {
    assert(grey.type() == CV_8UC1 && (mask.empty() || (mask.type() == CV_8UC1 && mask.size() == grey.size())));
    const Histogram histogram = histogramOf(grey, mask);
    std::int64_t pixels = 0;
    for (const std::int64_t count : histogram) pixels += count;
    if (pixels == 0) return {};
    const auto all = static_cast<double>(pixels);
    return {static_cast<double>(histogram[254] + histogram[255]) / all,
            static_cast<double>(histogram[0] + histogram[1]) / all, quantile(histogram, pixels, 0.05),
            quantile(histogram, pixels, 0.5), quantile(histogram, pixels, 0.95)};
}

}  // namespace ringrule
