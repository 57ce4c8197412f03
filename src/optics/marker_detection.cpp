// SPDX-License-Identifier: GPL-3.0-or-later
#include "optics/marker_detection.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include <opencv2/aruco.hpp>
#include <opencv2/imgproc.hpp>

namespace ringrule {
namespace {

Square inFullPixels(const std::vector<cv::Point2f>& corners, int reduction) {
    const double factor = reduction, half = 0.5 * (factor - 1.0);
    Square square;
    for (std::size_t k = 0; k < 4; ++k) square[k] = {corners[k].x * factor + half, corners[k].y * factor + half};
    return square;
}

constexpr int kCellPx = 6;

// The square made upright and binary, `cells` cells of `kCellPx` pixels a side.
cv::Mat uprightCells(const ReducedImage& image, const Square& square, int cells) {
    const double factor = image.factor, half = 0.5 * (factor - 1.0);
    std::array<cv::Point2f, 4> from;
    for (std::size_t k = 0; k < 4; ++k)
        from[k] = cv::Point2d((square[k].x - half) / factor, (square[k].y - half) / factor);
    const auto last = static_cast<float>(cells * kCellPx) - 0.5F;
    const std::array<cv::Point2f, 4> to{cv::Point2f{-0.5F, -0.5F}, {last, -0.5F}, {last, last}, {-0.5F, last}};
    cv::Mat upright;
    cv::warpPerspective(image.grey, upright, cv::getPerspectiveTransform(from.data(), to.data()),
                        {cells * kCellPx, cells * kCellPx}, cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::threshold(upright, upright, 0, 1, cv::THRESH_BINARY | cv::THRESH_OTSU);
    return upright;
}

// One bit a cell by the majority of its inner pixels; nothing when the border is not black throughout.
std::optional<cv::Mat> bitsOf(const cv::Mat& upright, int cells) {
    cv::Mat bits(cells, cells, CV_8UC1);
    for (int y = 0; y < cells; ++y) {
        for (int x = 0; x < cells; ++x) {
            const cv::Rect inner(x * kCellPx + 1, y * kCellPx + 1, kCellPx - 2, kCellPx - 2);
            const bool white = 2 * cv::countNonZero(upright(inner)) > inner.area();
            const bool border = x == 0 || y == 0 || x == cells - 1 || y == cells - 1;
            if (white && border) return std::nullopt;
            bits.at<std::uint8_t>(y, x) = white ? 1 : 0;
        }
    }
    return bits(cv::Rect(1, 1, cells - 2, cells - 2)).clone();
}

}  // namespace

ReducedImage reduced(const cv::Mat& grey, int factor) {
    if (factor <= 1) return {grey, 1};
    // Whole blocks only: a resize to a rounded size would stretch the image by up to a block.
    ReducedImage image{grey(cv::Rect(0, 0, grey.cols / factor * factor, grey.rows / factor * factor)), factor};
    // OpenCV halves five times faster than it reduces by any other factor.
    for (int left = factor; left > 1;) {
        const int step = left % 2 == 0 ? 2 : left;
        cv::Mat smaller;
        cv::resize(image.grey, smaller, {image.grey.cols / step, image.grey.rows / step}, 0, 0, cv::INTER_AREA);
        image.grey = smaller;
        left /= step;
    }
    return image;
}

ReducedImage reduced(const Photo& photo, int factor) {
    if (factor % 2 != 0 || photo.halfGrey.empty()) return reduced(photo.grey, factor);
    return {reduced(photo.halfGrey, factor / 2).grey, factor};
}

DetectedSquares detectMarkers(const ReducedImage& image, const MarkerDictionary& dictionary,
                              const DetectionOptions& options) {
    auto parameters = cv::aruco::DetectorParameters::create();
    parameters->adaptiveThreshWinSizeMin = options.windowPx;
    parameters->adaptiveThreshWinSizeMax = options.windowPx;
    parameters->cornerRefinementMethod = cv::aruco::CORNER_REFINE_NONE;
    parameters->errorCorrectionRate = options.errorCorrection;
    parameters->minMarkerPerimeterRate = 0.02;
    std::vector<std::vector<cv::Point2f>> corners, others;
    std::vector<int> ids;
    cv::aruco::detectMarkers(image.grey, cv::aruco::getPredefinedDictionary(dictionary.opencvId), corners, ids,
                             parameters, others);
    DetectedSquares found;
    for (std::size_t i = 0; i < ids.size(); ++i)
        found.markers.push_back({ids[i], inFullPixels(corners[i], image.factor)});
    for (const auto& other : others) found.others.push_back(inFullPixels(other, image.factor));
    return found;
}

std::optional<FoundMarker> readMarker(const ReducedImage& image, const Square& square,
                                      const MarkerDictionary& dictionary) {
    const int cells = dictionary.bits + 2;
    const auto bits = bitsOf(uprightCells(image, square, cells), cells);
    FoundMarker marker;
    int turns = 0;
    if (!bits || !cv::aruco::getPredefinedDictionary(dictionary.opencvId)->identify(*bits, marker.id, turns, 0.0))
        return std::nullopt;
    marker.cornersPx = square;
    std::rotate(marker.cornersPx.begin(), marker.cornersPx.begin() + (4 - turns) % 4, marker.cornersPx.end());
    return marker;
}

}  // namespace ringrule
