// SPDX-License-Identifier: GPL-3.0-or-later
#include "midline/eye.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

constexpr double kAcross = 0.85;  ///< share of the half-width that is looked at

/// Skin around the midline laid out straight: rows across from left to right, columns along.
struct Strip {
    cv::Mat1f grey;
    double stepPx = 1.0;
    std::vector<std::size_t> station;  ///< of each column
};

Strip stripOf(const cv::Mat& photo, const Midline& midline, double fromShare, double toShare) {
    Strip strip;
    const auto count = midline.spinePx.size();
    const double spacing = midline.lengthPx() / static_cast<double>(count - 1);
    const auto from = std::max<std::size_t>(2, static_cast<std::size_t>(fromShare * static_cast<double>(count)));
    const auto to = std::min(count - 3, static_cast<std::size_t>(toShare * static_cast<double>(count)));
    double half = 0.0;
    for (std::size_t i = from; i < to; ++i) {
        half = std::max(half, 0.5 * (midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i]));
        strip.station.push_back(i);
    }
    strip.stepPx = std::max(0.5, spacing);
    const int rows = 2 * static_cast<int>(std::ceil(half / strip.stepPx)) + 1;
    strip.grey.create(rows, static_cast<int>(strip.station.size()));
    const int middleRow = rows / 2;
    for (int column = 0; column < strip.grey.cols; ++column) {
        const std::size_t i = strip.station[static_cast<std::size_t>(column)];
        const PixelPoint step = midline.spinePx[i + 2] - midline.spinePx[i - 2];
        const PixelPoint left = PixelPoint{step.y, -step.x} * (1.0 / std::max(norm(step), 1e-9));
        for (int row = 0; row < rows; ++row) {
            const double wanted = (middleRow - row) * strip.stepPx;
            const double across =
                std::clamp(wanted, -kAcross * midline.rightHalfWidthPx[i], kAcross * midline.leftHalfWidthPx[i]);
            const PixelPoint at = midline.spinePx[i] + left * across;
            const int x = std::clamp(cvRound(at.x), 0, photo.cols - 1);
            const int y = std::clamp(cvRound(at.y), 0, photo.rows - 1);
            strip.grey(row, column) = static_cast<float>(photo.at<unsigned char>(y, x));
        }
    }
    return strip;
}

}  // namespace

EyeSpot findEye(const Photo& photo, const Midline& midline, double fromShare, double toShare) {
    EyeSpot best;
    const Strip strip = stripOf(photo.grey, midline, fromShare, toShare);
    if (strip.grey.cols < 6 || strip.grey.rows < 5) return best;
    cv::Scalar mean;
    cv::Scalar spread;
    cv::meanStdDev(strip.grey, mean, spread);
    const double half = 0.5 * strip.grey.rows;
    for (const double share : {0.22, 0.32, 0.45}) {
        const double sigma = std::max(0.7, share * half * 0.6);
        cv::Mat1f fine;
        cv::Mat1f wide;
        cv::GaussianBlur(strip.grey, fine, {}, sigma, sigma, cv::BORDER_REPLICATE);
        cv::GaussianBlur(strip.grey, wide, {}, 1.8 * sigma, 1.8 * sigma, cv::BORDER_REPLICATE);
        cv::subtract(wide, fine, wide);
        // An eye sits where the head is deep, not on the snout.
        for (int column = 0; column < wide.cols; ++column) {
            const std::size_t i = strip.station[static_cast<std::size_t>(column)];
            const double width = midline.leftHalfWidthPx[i] + midline.rightHalfWidthPx[i];
            wide.col(column) *= 0.5 * width / half / strip.stepPx;
        }
        double most = 0.0;
        cv::Point at;
        cv::minMaxLoc(wide, nullptr, &most, nullptr, &at);
        const double strength = most / (spread[0] + 0.02 * mean[0] + 0.5);
        if (strength <= best.strength) continue;
        const std::size_t i = strip.station[static_cast<std::size_t>(at.x)];
        const int middleRow = strip.grey.rows / 2;
        const double across = (middleRow - at.y) * strip.stepPx;
        const double side = across > 0.0 ? midline.leftHalfWidthPx[i] : midline.rightHalfWidthPx[i];
        best = {static_cast<double>(i) / static_cast<double>(midline.spinePx.size() - 1),
                side > 0.0 ? std::clamp(across / side, -1.0, 1.0) : 0.0, strength};
    }
    return best;
}

}  // namespace ringrule
